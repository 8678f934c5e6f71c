import type { Program } from "../../reader/program/program.ts";
import type { At, FunctionSymbol, TypedExpression, Variable } from "../../reader/typed/nodes.ts";
import { alignmentOf, sizeOf } from "../../reader/types/layout.ts";
import { ExpressionCosts } from "../lower/cycles/expressions.ts";
import { inliningOf } from "../lower/cycles/inlining.ts";
import { Widths } from "../lower/cycles/widths.ts";
import type { Lambda, Linkage, Origin } from "../lower/scope.ts";
import type { Clock, InsteadFunction } from "../outcome.ts";
import type { Classes } from "./classes.ts";
import { Halt } from "./halt.ts";
import type { Memory } from "./memory.ts";

type StringLiteral = Extract<TypedExpression, { kind: "string" }>;

/** Gives functions, objects, literals and places in the source their numbers and addresses, when first asked for. */
export class Linker implements Linkage {
  readonly model: Program["model"];
  /** Places in the source by number; 0 is none. */
  readonly places: (At | undefined)[] = [undefined];
  readonly texts: string[] = [];
  #functions = 0;
  readonly #program: Program;
  readonly #memory: Memory;
  readonly #classes: Classes;
  readonly #instead: InsteadFunction | undefined;
  readonly costs: ExpressionCosts | undefined;
  readonly isInlined: (symbol: FunctionSymbol) => boolean;
  readonly #numbers = new Map<FunctionSymbol, number>();
  readonly #objects = new Map<Variable, number>();
  readonly #lasting = new Map<TypedExpression, number>();
  readonly #literals = new Map<StringLiteral, number>();
  readonly #guards = new Map<Variable, number>();
  readonly #placeNumbers = new Map<At, number>();
  /** Called for functions that nobody had asked for before. */
  onNumbered: ((number: number, symbol: FunctionSymbol) => void) | undefined;
  /** Where the machine has the code of a function. */
  originOf: ((symbol: FunctionSymbol) => Origin | undefined) | undefined;
  /** Called for objects that nobody had asked for before. */
  onPlaced: ((variable: Variable) => void) | undefined;
  /** Called for others, whenever code that uses them is made. */
  onUsed: ((variable: Variable) => void) | undefined;

  constructor(
    program: Program,
    memory: Memory,
    classes: Classes,
    instead: InsteadFunction | undefined,
    clock: Clock | undefined,
  ) {
    this.#instead = instead;
    this.isInlined = inliningOf(program);
    this.costs = clock && new ExpressionCosts(new Widths(program.model), this);
    this.#program = program;
    this.#memory = memory;
    this.#classes = classes;
    this.model = program.model;
  }

  /** Lambdas by their functions. */
  readonly lambdas = new Map<FunctionSymbol, Lambda>();

  declareLambda(lambda: Lambda): void {
    this.lambdas.set(lambda.function, lambda);
  }

  functionNumber(symbol: FunctionSymbol): number {
    const meant = this.#program.definitionOf(symbol) ?? symbol;
    let number = this.#numbers.get(meant);
    if (number === undefined) {
      number = this.addNameless();
      this.#numbers.set(meant, number);
      this.onNumbered?.(number, meant);
    }
    return number;
  }

  functionNamed(name: string): FunctionSymbol | undefined {
    for (const { typed } of this.#program.units) {
      const found = typed.functions.find((each) => each.name === name && each.memberOf === undefined);
      if (found !== undefined) return found;
    }
    return undefined;
  }

  definitionOf(symbol: FunctionSymbol): FunctionSymbol | undefined {
    return this.#program.definitionOf(symbol);
  }

  isReplaced(symbol: FunctionSymbol | undefined): boolean {
    if (symbol === undefined) return this.#instead !== undefined;
    return this.#instead?.(this.#program.definitionOf(symbol) ?? symbol) !== undefined;
  }

  origin(symbol: FunctionSymbol): Origin | undefined {
    return this.originOf?.(this.#program.definitionOf(symbol) ?? symbol);
  }

  ownFunction(name: string, parameters: number): FunctionSymbol | undefined {
    return this.#program.functions.find(
      (symbol) =>
        symbol.qualifiedName === name &&
        symbol.type.parameters.length === parameters &&
        symbol.definition !== undefined,
    );
  }

  /** A number for a function that has no declaration of its own. */
  addNameless(): number {
    this.#functions += 1;
    return this.#functions - 1;
  }

  functionPointer(symbol: FunctionSymbol): number {
    return this.functionNumber(symbol) + 1;
  }

  globalAddress(variable: Variable): number {
    const meant = this.#program.definingVariable(variable);
    const known = this.#objects.get(meant);
    if (known !== undefined) {
      this.onUsed?.(meant);
      return known;
    }
    const isReference = meant.type.kind === "reference";
    const size = isReference
      ? this.model.pointer / 8
      : (sizeOf(meant.type, this.model) ?? sizeOf(variable.type, this.model));
    if (size === undefined)
      throw new Halt("cannot-run", `cannot run: \`${variable.name}\`, whose size is not known`, variable.at);
    const address = this.#memory.placeStatic(size, alignmentOf(meant.type, this.model));
    this.#objects.set(meant, address);
    this.onPlaced?.(meant);
    return address;
  }

  placedAt(variable: Variable): number | undefined {
    return this.#objects.get(this.#program.definingVariable(variable));
  }

  lastingAddress(expression: TypedExpression, bytes: number, alignment: number): number {
    let address = this.#lasting.get(expression);
    if (address === undefined) {
      address = this.#memory.placeStatic(bytes, alignment);
      this.#lasting.set(expression, address);
    }
    return address;
  }

  literalAddress(literal: StringLiteral): number {
    let address = this.#literals.get(literal);
    if (address === undefined) {
      address = this.#memory.placeStatic(literal.bytes.length, 1);
      this.#literals.set(literal, address);
      this.#memory.bytes.set(literal.bytes, address);
    }
    return address;
  }

  /** After memory was cleared. */
  writeLiterals(): void {
    for (const [literal, address] of this.#literals) this.#memory.bytes.set(literal.bytes, address);
  }

  placeNumber(at: At): number {
    let number = this.#placeNumbers.get(at);
    if (number === undefined) {
      number = this.places.push(at) - 1;
      this.#placeNumbers.set(at, number);
    }
    return number;
  }

  textNumber(text: string): number {
    const known = this.texts.indexOf(text);
    return known >= 0 ? known : this.texts.push(text) - 1;
  }

  guardNumber(variable: Variable): number {
    let number = this.#guards.get(variable);
    if (number === undefined) {
      number = this.#guards.size;
      this.#guards.set(variable, number);
    }
    return number;
  }

  classNumber(...[record, offset]: Parameters<Linkage["classNumber"]>): number {
    return this.#classes.markNumber(record, offset);
  }

  methodNumber(symbol: FunctionSymbol): number {
    return this.#classes.methodNumber(symbol);
  }

  classOf(...[record]: Parameters<Linkage["classOf"]>): ReturnType<Linkage["classOf"]> {
    return this.#classes.membersOf(record);
  }
}
