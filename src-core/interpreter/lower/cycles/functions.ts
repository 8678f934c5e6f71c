import type {
  FunctionDefinition,
  FunctionSymbol,
  TypedExpression,
  TypedStatement,
  Variable,
} from "../../../reader/typed/nodes.ts";
import { expressionsIn, operandsOf, statementsIn } from "../../../reader/typed/walk.ts";
import { sizeOf as sizeOfType } from "../../../reader/types/layout.ts";
import type { DataModel, Type } from "../../../reader/types/types.ts";
import { cost } from "./costs.ts";
import { directCallee, type ExpressionCosts, type Inlining } from "./expressions.ts";

/** Registers that a function may change without saving them: R18 to R27, R30 and R31 (avr-gcc's ABI). */
const freeRegisters = 12;
/** Registers that values on the way take besides the variables and the widest of those values. */
const registersOnTheWay = 2;
/** Registers that callees have to save, the frame pointer not among them: R2 to R17. */
const savedRegisters = 16;

/** Cycles before and behind the body of a function. */
export interface CallCycles {
  readonly enter: number;
  readonly leave: number;
}

/** What a call takes besides the body: there and back, and the registers that are saved for the caller. */
export function callCycles(
  symbol: FunctionSymbol,
  definition: FunctionDefinition,
  costs: ExpressionCosts,
  inlining: Inlining,
): CallCycles {
  const isHandler = symbol.vector !== undefined;
  if (!isHandler && inlining.isInlined(symbol)) return { enter: 0, leave: 0 };
  const use = new Use(inlining, costs);
  use.statement(definition.body);
  const live = sizeOf(use.variables, costs);
  const saved = isHandler
    ? savedByHandler(live, use)
    : Math.min(savedRegisters, use.calls ? sizeOf(use.acrossCalls, costs) : pushed(live, use));
  const half = saved * cost.saved + (use.needsFrame ? cost.frame : 0);
  return isHandler
    ? { enter: cost.response + cost.handlerEntry + half, leave: cost.handlerExit + half }
    : { enter: cost.call + half, leave: cost.return + half };
}

function savedByHandler(live: number, use: Use): number {
  return use.calls ? freeRegisters : Math.min(freeRegisters, live + use.widest);
}

function pushed(live: number, use: Use): number {
  return Math.max(0, live + use.widest + registersOnTheWay - freeRegisters);
}

function sizeOf(variables: ReadonlySet<Variable>, { widths }: ExpressionCosts): number {
  let bytes = 0;
  for (const { type } of variables) bytes += type.kind === "reference" ? 2 : widths.bytesOf(type);
  return bytes;
}

function isLocal(expression: TypedExpression): boolean {
  if (expression.kind !== "variable" || expression.variable.type.kind === "reference") return false;
  return expression.variable.storage === "local" || expression.variable.storage === "parameter";
}

/** Members of small objects are in registers like variables. */
function isLarge(type: Type, model: DataModel): boolean {
  return type.kind === "array" || (type.kind === "record" && (sizeOfType(type, model) ?? 0) > 4);
}

/** Which registers a body uses, in the order in which it is run. */
class Use {
  readonly variables = new Set<Variable>();
  /** Named behind a call, so that they have to outlast it. */
  readonly acrossCalls = new Set<Variable>();
  calls = false;
  /** There are arrays and objects of several registers, or something points to a variable. */
  needsFrame = false;
  /** Bytes that the values on the way take, an address among them. */
  widest = 1;
  readonly #inlining: Inlining;
  readonly #costs: ExpressionCosts;

  constructor(inlining: Inlining, costs: ExpressionCosts) {
    this.#inlining = inlining;
    this.#costs = costs;
  }

  statement(statement: TypedStatement): void {
    const isLoop = statement.kind === "while" || statement.kind === "do" || statement.kind === "for";
    // What a loop names comes again behind a call in it.
    for (let turn = 0; turn < (isLoop ? 2 : 1); turn += 1) {
      for (const inner of statementsIn(statement)) {
        if (statement.kind === "if" && inner !== statement.init) continue;
        if (statement.kind === "switch") continue;
        this.statement(inner);
      }
      for (const expression of expressionsIn(statement)) this.#expression(expression);
      if (statement.kind === "if") {
        this.statement(statement.then);
        if (statement.otherwise !== undefined) this.statement(statement.otherwise);
      }
      if (statement.kind === "switch") this.statement(statement.body);
    }
    if (statement.kind === "variables")
      for (const { type, storage } of statement.variables)
        if (storage === "local" && isLarge(type, this.#costs.widths.model)) this.needsFrame = true;
  }

  #expression(expression: TypedExpression): void {
    for (const operand of operandsOf(expression)) this.#expression(operand);
    const { widths } = this.#costs;
    if (!widths.isConstant(expression)) {
      const isIndexed = expression.kind === "index" && !widths.isConstant(expression.index);
      const bytes = widths.bytes(expression);
      this.widest = Math.max(this.widest, isIndexed ? bytes + 2 : bytes);
    }
    if (expression.kind === "address" && isLocal(expression.operand)) this.needsFrame = true;
    if (expression.kind === "variable") {
      const { variable } = expression;
      if (variable.storage !== "local" && variable.storage !== "parameter") return;
      if (variable.type.kind === "record" || variable.type.kind === "array") return;
      this.variables.add(variable);
      if (this.calls) this.acrossCalls.add(variable);
    }
    if (expression.kind === "call" || expression.kind === "method-call") {
      const callee = expression.kind === "method-call" ? expression.method : directCallee(expression.callee);
      // An instruction, a delay.
      if (callee?.standIn === true) return;
      if (callee === undefined || !this.#inlining.isInlined(callee)) this.calls = true;
      else if (callee.definition !== undefined && !this.#inside.has(callee)) {
        this.#inside.add(callee);
        this.statement(callee.definition.body);
        this.#inside.delete(callee);
      }
    }
  }

  readonly #inside = new Set<FunctionSymbol>();
}
