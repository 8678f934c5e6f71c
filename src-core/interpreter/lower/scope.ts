import type {
  At,
  ClassMembers,
  FunctionSymbol,
  TypedExpression,
  TypedStatement,
  Variable,
} from "../../reader/typed/nodes.ts";
import type { DataModel, RecordDeclaration, Type } from "../../reader/types/types.ts";
import type { ExpressionCosts } from "./cycles/expressions.ts";

export type Lambda = Extract<TypedExpression, { kind: "lambda" }>;

/** The code of a function is made from the program, or it is a library's or the machine's own. */
export type Origin = "program" | "outside";

/** What lowering asks of the machine that the code is for. */
export interface Linkage {
  readonly model: DataModel;
  /** Says what takes how many cycles, where they are counted: `C[0]` then has those left until `spent` is called. */
  readonly costs: ExpressionCosts | undefined;
  /** Whether the compiler puts the function's code in the place of its calls. */
  isInlined(symbol: FunctionSymbol): boolean;
  /** A function of C by its name. */
  functionNamed(name: string): FunctionSymbol | undefined;
  /** The function with the body; undefined for none. */
  definitionOf(symbol: FunctionSymbol): FunctionSymbol | undefined;
  /** The number of a function in the machine's table. */
  functionNumber(symbol: FunctionSymbol): number;
  /**
   * Whether something else is run in its place: a call that names it, virtual or not, then adds the place of its last argument and
   * the address that this reads (0 for none). Undefined: whether what a pointer means may be replaced.
   */
  isReplaced(symbol: FunctionSymbol | undefined): boolean;
  /** Where the code of a function is; undefined where there is none to call. */
  origin(symbol: FunctionSymbol): Origin | undefined;
  /** A function of the program's own by its name, which takes so many parameters. */
  ownFunction(name: string, parameters: number): FunctionSymbol | undefined;
  /** The value of a pointer to it. */
  functionPointer(symbol: FunctionSymbol): number;
  /** Where an object at file level, a static local or a literal lies. */
  globalAddress(variable: Variable): number;
  /** Where an object without a name lies that lasts as long as the program. */
  lastingAddress(expression: TypedExpression, bytes: number, alignment: number): number;
  literalAddress(literal: Extract<TypedExpression, { kind: "string" }>): number;
  /** The number of a place in the source. */
  placeNumber(at: At): number;
  /** The number of a text that a run can stop with. */
  textNumber(text: string): number;
  /** The number of a guard that says whether a static local was initialised. */
  guardNumber(variable: Variable): number;
  /** The number by which objects of this class, at this offset in a larger one, tell what they are. */
  classNumber(record: RecordDeclaration, offset: number): number;
  methodNumber(symbol: FunctionSymbol): number;
  classOf(record: RecordDeclaration): ClassMembers | undefined;
  /** Says which lambda a function belongs to, before that function is lowered. */
  declareLambda(lambda: Lambda): void;
}

/** A construct that cannot be run: lowering leaves a stop in its place. */
export class CannotLower extends Error {
  readonly at: At;

  constructor(what: string, at: At) {
    super(what);
    this.at = at;
  }
}

/** Where a jump out of a statement leads: to JavaScript's own target, or to a block by number. */
export type Jump = "own" | number | undefined;

/** What ends the objects of a block that were declared up to here, the first declared first. */
export interface BlockEnd {
  /** The statement that is the block; undefined for that of the parameters. */
  readonly owner: TypedStatement | undefined;
  readonly steps: string[];
}

/** A label: its block, the statements around it, and once it is lowered how many objects each of them had then. */
export interface LabelBlock {
  readonly number: number;
  readonly around: ReadonlySet<TypedStatement>;
  live: readonly number[] | undefined;
}

/** Names, frame and blocks of one function while it is lowered. */
export class FunctionScope {
  readonly linkage: Linkage;
  readonly inMemory: ReadonlySet<Variable>;
  /** Variables that may be read before they are given a value. */
  readonly names = new Map<Variable, string>();
  readonly addresses = new Map<Variable, string>();
  readonly declared: string[] = [];
  frameBytes = 0;
  /** Checked for a value at every reading: those declared without one, or that a jump may pass over. */
  readonly unsure = new Set<Variable>();
  breakTo: Jump;
  continueTo: Jump;
  /** Objects to destroy when a block is left, innermost block last. */
  readonly destroyed: BlockEnd[] = [];
  /** How many of them belong outside of the loop or switch that `break` and `continue` leave. */
  breakDepth = 0;
  continueDepth = 0;
  readonly labels = new Map<string, LabelBlock>();
  /** The local object that is made where the caller wants the result (C++11 12.8p31). */
  resultVariable: Variable | undefined;
  /** Blocks of `case` and `default` in functions that are taken apart. */
  readonly cases = new Map<TypedStatement, number>();
  /** Whether the full expression being lowered makes temporary objects that have to be ended. */
  holdsTemporaries = false;
  blocks = 0;
  returns: Type = { kind: "void" };
  /** Variables of the function around a lambda, and its copies of them. */
  readonly captured = new Set<Variable>();
  /** JavaScript for `this`. */
  self = "self";
  #names = 0;

  constructor(linkage: Linkage, inMemory: ReadonlySet<Variable>) {
    this.linkage = linkage;
    this.inMemory = inMemory;
  }

  /** A variable of the generated code. */
  temporary(): string {
    this.#names += 1;
    const name = `t${this.#names}`;
    this.declared.push(name);
    return name;
  }

  /** A name for a variable of the source; the caller declares it. */
  nameFor(variable: Variable): string {
    this.#names += 1;
    const name = `v${this.#names}`;
    this.names.set(variable, name);
    return name;
  }

  /** Room in the frame, as JavaScript. */
  room(bytes: number, alignment: number): string {
    this.frameBytes = Math.ceil(this.frameBytes / alignment) * alignment;
    const offset = this.frameBytes;
    this.frameBytes += Math.max(bytes, 1);
    return `(f+${offset})`;
  }

  place(at: At): number {
    return this.linkage.placeNumber(at);
  }
}
