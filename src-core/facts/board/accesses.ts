import type {
  At,
  FunctionSymbol,
  TypedExpression,
  TypedStatement,
  Variable,
} from "../../reader/typed/nodes.ts";
import { expressionsIn, operandsOf, statementsIn } from "../../reader/typed/walk.ts";
import type { Field, Type } from "../../reader/types/types.ts";
import { callOf } from "./calls.ts";
import { interruptSwitchOf, keepsInterruptsOff } from "./interrupts-off.ts";

/** A variable that outlives calls, or a member of one, or a member of the object that a function works on. */
export interface SharedPlace {
  /** Undefined for a member of `this`. */
  readonly variable: Variable | undefined;
  /** The outermost member used; undefined for the whole variable. */
  readonly field: Field | undefined;
}

export interface Access {
  readonly place: SharedPlace;
  readonly mode: "read" | "write" | "read and write";
  readonly at: At;
  readonly within: FunctionSymbol;
  /** The object, or a part of it on the way to what is accessed, is volatile. */
  readonly volatile: boolean;
  /** It stands where the code has turned interrupts off: a barrier for the compiler as well. */
  readonly interruptsOff: boolean;
}

type Mode = Access["mode"];

/** A call of a function of the project, and whether interrupts are off around it. */
export interface PlacedCall {
  readonly callee: FunctionSymbol;
  readonly interruptsOff: boolean;
}

export interface Uses {
  readonly accesses: readonly Access[];
  readonly calls: readonly PlacedCall[];
}

const ofStatements = new WeakMap<readonly TypedStatement[], Uses>();

/**
 * What statements of a function read, write and call themselves; pointers are not resolved. Kept with the list:
 * a function is come to from the handlers and from the main code, with interrupts on and off.
 */
export function usesIn(within: FunctionSymbol, statements: readonly TypedStatement[]): Uses {
  const known = ofStatements.get(statements);
  if (known !== undefined) return known;
  const collector = new Collector(within);
  let off = false;
  for (const statement of statements) off = collector.statement(statement, off);
  ofStatements.set(statements, collector);
  return collector;
}

class Collector implements Uses {
  readonly accesses: Access[] = [];
  readonly calls: PlacedCall[] = [];
  private readonly within: FunctionSymbol;

  constructor(within: FunctionSymbol) {
    this.within = within;
  }

  /** Gives whether interrupts are off after the statement, as far as its own text says. */
  statement(statement: TypedStatement, off: boolean): boolean {
    if (statement.kind === "block") {
      let now = off;
      for (const inner of statement.statements) now = this.statement(inner, now);
      return now;
    }
    const inside = off || keepsInterruptsOff(statement);
    for (const expression of expressionsIn(statement)) this.expression(expression, "read", inside);
    for (const inner of statementsIn(statement)) this.statement(inner, inside);
    return interruptSwitchOf(statement) ?? off;
  }

  private expression(expression: TypedExpression, mode: Mode, off: boolean): void {
    const call = callOf(expression);
    if (call !== undefined && !call.callee.standIn)
      this.calls.push({ callee: call.callee, interruptsOff: off });
    switch (expression.kind) {
      case "assign":
        this.expression(expression.target, "write", off);
        this.expression(expression.value, "read", off);
        return;
      case "compound-assign":
        this.expression(expression.target, "read and write", off);
        this.expression(expression.value, "read", off);
        return;
      case "update":
        this.expression(expression.operand, "read and write", off);
        return;
      case "address":
        this.subscripts(expression.operand, off);
        return;
      case "variable":
      case "member":
      case "index":
        this.place(expression, mode, off);
        return;
      case "statement-value":
        this.statement(expression.body, off);
        return;
      default:
        for (const operand of operandsOf(expression)) this.expression(operand, "read", off);
    }
  }

  private place(expression: TypedExpression, mode: Mode, off: boolean): void {
    this.subscripts(expression, off);
    const found = placeOf(expression);
    if (found === undefined) return;
    this.accesses.push({ ...found, mode, at: expression.at, within: this.within, interruptsOff: off });
  }

  /** Reads that happen on the way to a place: indexes, and pointers that are followed. */
  private subscripts(expression: TypedExpression, off: boolean): void {
    switch (expression.kind) {
      case "index":
        this.expression(expression.index, "read", off);
        if (placeOf(expression) === undefined) this.expression(expression.array, "read", off);
        else this.subscripts(expression.array, off);
        return;
      case "member":
        this.subscripts(expression.object, off);
        return;
      case "convert":
        this.subscripts(expression.operand, off);
        return;
      case "variable":
      case "this":
        return;
      case "dereference":
        if (expression.operand.kind !== "this") this.expression(expression.operand, "read", off);
        return;
      default:
        this.expression(expression, "read", off);
    }
  }
}

/** The place that an lvalue names; undefined where it is local, or reached through a pointer. */
function placeOf(expression: TypedExpression): Pick<Access, "place" | "volatile"> | undefined {
  let field: Field | undefined;
  let volatile = false;
  let inner = expression;
  for (;;) {
    volatile ||= isVolatile(inner.type);
    switch (inner.kind) {
      case "variable":
        return outlivesCalls(inner.variable)
          ? {
              place: { variable: inner.variable, field },
              volatile: volatile || isVolatile(inner.variable.type),
            }
          : undefined;
      case "this":
        return field && { place: { variable: undefined, field }, volatile };
      case "member":
        field = inner.field;
        volatile ||= isVolatile(inner.field.type);
        inner = inner.object;
        break;
      case "index":
        inner = inner.array;
        break;
      case "convert":
        if (inner.reason !== "decay" && inner.reason !== "base") return undefined;
        inner = inner.operand;
        break;
      case "dereference":
        if (inner.operand.kind !== "this") return undefined;
        inner = inner.operand;
        break;
      default:
        return undefined;
    }
  }
}

function outlivesCalls(variable: Variable): boolean {
  return variable.storage === "global" || variable.storage === "file" || variable.storage === "static-local";
}

function isVolatile(type: Type): boolean {
  return type.volatile === true || (type.kind === "array" && isVolatile(type.of));
}
