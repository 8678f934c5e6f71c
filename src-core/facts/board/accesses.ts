import type { Program } from "../../reader/program/program.ts";
import { KeptResults } from "../../reader/typed/kept-results.ts";
import type {
  At,
  FunctionSymbol,
  TypedExpression,
  TypedStatement,
  Variable,
} from "../../reader/typed/nodes.ts";
import { expressionsIn, operandsOf, statementsIn, walkStatement } from "../../reader/typed/walk.ts";
import { withoutConversions } from "../../reader/typed/without-conversions.ts";
import type { Field, Type } from "../../reader/types/types.ts";
import { callOf } from "./calls.ts";
import {
  handlerSwitchOf,
  interruptSwitchOf,
  keepsInterruptsOff,
  turnsOffWhileAlive,
} from "./interrupts-off.ts";

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
  /** Of what is accessed: an element or a member, where that is all. */
  readonly type: Type;
  /** What it is set to, or what is set or cleared in it; undefined for other changes, and for reads. */
  readonly value: TypedExpression | undefined;
  readonly within: FunctionSymbol;
  /** The innermost statement around it that is no block. */
  readonly statement: TypedStatement;
  /** The object, or a part of it on the way to what is accessed, is volatile. */
  readonly volatile: boolean;
  /** It stands where the code has turned interrupts off: a barrier for the compiler as well. */
  readonly interruptsOff: boolean;
  /** No handler does harm in between: its own interrupt is off, or the value is read until two readings agree. */
  readonly undisturbed: boolean;
  /** What has been looked at on the way here, so that it may be a flag that hands the value over. */
  readonly lookedAt: readonly LookedAt[];
}

/** A place that a condition reads, or a function that it calls. */
export type LookedAt = SharedPlace | FunctionSymbol;

type Mode = Access["mode"];

/** What is known of the interrupts, and of conditions, where some code stands. */
export interface Surroundings {
  readonly interruptsOff: boolean;
  readonly undisturbed: boolean;
  readonly lookedAt: readonly LookedAt[];
}

export const OPEN: Surroundings = { interruptsOff: false, undisturbed: false, lookedAt: [] };

/** A call of a function of the project, and what holds around it. */
export interface PlacedCall extends Surroundings {
  readonly callee: FunctionSymbol;
}

export interface Uses {
  readonly accesses: readonly Access[];
  readonly calls: readonly PlacedCall[];
}

/**
 * What statements of a function read, write and call themselves; pointers are not resolved. Kept with the list:
 * a function is come to from the handlers and from the main code, with interrupts on and off.
 */
export class UsesOfStatements {
  readonly program: Program;

  constructor(program: Program) {
    this.program = program;
  }

  in(within: FunctionSymbol, statements: readonly TypedStatement[]): Uses {
    return this.#collected(within, statements, statements);
  }

  inOne(within: FunctionSymbol, statement: TypedStatement): Uses {
    return this.#collected(within, statement, [statement]);
  }

  #collected(within: FunctionSymbol, key: object, statements: readonly TypedStatement[]): Uses {
    return collected.get(this.program.lasting, key, () => {
      const collector = new Collector(within, this.program);
      collector.statements(statements);
      return { accesses: collector.accesses, calls: collector.calls };
    });
  }
}

const collected = new KeptResults<object, Uses>();

class Collector implements Uses {
  readonly accesses: Access[] = [];
  readonly calls: PlacedCall[] = [];
  readonly #within: FunctionSymbol;
  readonly #program: Program;
  /** What local variables were made of. */
  readonly #locals = new Map<Variable, readonly LookedAt[]>();
  #around: Surroundings = OPEN;
  /** A place that the loop around reads until two readings agree. */
  #agreeing: SharedPlace | undefined = undefined;
  #statement: TypedStatement | undefined = undefined;

  constructor(within: FunctionSymbol, program: Program) {
    this.#within = within;
    this.#program = program;
  }

  /** Leaves what holds behind them in `#around`, as far as their own text says. */
  statements(statements: readonly TypedStatement[]): void {
    const before = this.#around;
    let untilEnd = false;
    for (const statement of statements) {
      this.#one(statement);
      if (statement.kind !== "variables" || !turnsOffWhileAlive(statement, this.#program)) continue;
      untilEnd = true;
      this.#around = { ...this.#around, interruptsOff: true };
    }
    if (untilEnd) this.#around = { ...this.#around, interruptsOff: before.interruptsOff };
  }

  #one(statement: TypedStatement): void {
    if (statement.kind === "block") {
      this.statements(statement.statements);
      return;
    }
    const before = this.#around;
    const [outerStatement, outerAgreeing] = [this.#statement, this.#agreeing];
    if (keepsInterruptsOff(statement)) this.#around = { ...before, interruptsOff: true };
    this.#statement = statement;
    this.#agreeing = agreedPlace(statement) ?? outerAgreeing;
    for (const expression of expressionsIn(statement)) this.#expression(expression, "read");
    const looked = this.#lookedAtBy(statement);
    const inside = { ...this.#around, lookedAt: together(this.#around.lookedAt, looked) };
    for (const inner of statementsIn(statement)) {
      this.#around = inside;
      this.#one(inner);
    }
    this.#remember(statement);
    this.#statement = outerStatement;
    this.#agreeing = outerAgreeing;
    this.#around = {
      interruptsOff: interruptSwitchOf(statement, this.#program) ?? before.interruptsOff,
      undisturbed: handlerSwitchOf(statement) ?? before.undisturbed,
      lookedAt: decidesWhatFollows(statement) ? inside.lookedAt : before.lookedAt,
    };
  }

  #lookedAtBy(statement: TypedStatement): readonly LookedAt[] {
    switch (statement.kind) {
      case "if":
      case "while":
      case "do":
      case "switch":
        return this.#namedIn(statement.condition);
      case "for":
        return statement.condition === undefined ? [] : this.#namedIn(statement.condition);
      default:
        return [];
    }
  }

  /** Places that an expression reads, and functions that it calls, also by way of local variables. */
  #namedIn(expression: TypedExpression): readonly LookedAt[] {
    const found: LookedAt[] = [];
    const look = (inner: TypedExpression): void => {
      const callee = callOf(inner)?.callee;
      if (callee !== undefined && !callee.standIn) found.push(callee);
      const place = placeOf(inner)?.place;
      if (place !== undefined) found.push(place);
      else if (inner.kind === "variable") found.push(...(this.#locals.get(inner.variable) ?? []));
      for (const operand of operandsOf(inner)) look(operand);
    };
    look(expression);
    return found;
  }

  #remember(statement: TypedStatement): void {
    const keep = (variable: Variable, value: TypedExpression): void => {
      const named = this.#namedIn(value);
      if (named.length > 0) this.#locals.set(variable, named);
    };
    if (statement.kind === "variables") {
      for (const variable of statement.variables) {
        if (variable.initializer?.kind === "value") keep(variable, variable.initializer.value);
      }
    } else if (statement.kind === "expression" && statement.expression.kind === "assign") {
      const { target, value } = statement.expression;
      if (target.kind === "variable" && !outlivesCalls(target.variable)) keep(target.variable, value);
    }
  }

  #expression(expression: TypedExpression, mode: Mode): void {
    const call = callOf(expression);
    if (call !== undefined && !call.callee.standIn) this.calls.push({ callee: call.callee, ...this.#around });
    switch (expression.kind) {
      case "assign":
        this.#written(expression.target, "write", expression.value);
        this.#expression(expression.value, "read");
        return;
      case "compound-assign":
        this.#written(
          expression.target,
          "read and write",
          expression.operator === "|" || expression.operator === "&" ? expression.value : undefined,
        );
        this.#expression(expression.value, "read");
        return;
      case "update":
        this.#expression(expression.operand, "read and write");
        return;
      case "address":
        this.#subscripts(expression.operand);
        return;
      case "variable":
      case "member":
      case "index":
        this.#place(expression, mode);
        return;
      case "convert":
        // Only the lowest byte of what is read goes on.
        if (isByte(expression.type) && placeOf(expression.operand) !== undefined) {
          this.#place(expression.operand, "read", expression.type);
          return;
        }
        this.#expression(expression.operand, "read");
        return;
      case "statement-value":
        this.#one(expression.body);
        return;
      default:
        for (const operand of operandsOf(expression)) this.#expression(operand, "read");
    }
  }

  #written(target: TypedExpression, mode: Mode, value: TypedExpression | undefined): void {
    if (target.kind === "variable" || target.kind === "member" || target.kind === "index") {
      this.#place(target, mode, target.type, value);
    } else this.#expression(target, mode);
  }

  #place(expression: TypedExpression, mode: Mode, seenAs?: Type, value?: TypedExpression): void {
    this.#subscripts(expression);
    const found = placeOf(expression);
    if (found === undefined) return;
    const { type, at } = expression;
    const statement = this.#statement;
    if (statement === undefined) return;
    const isAgreed = this.#agreeing !== undefined && isSamePlace(this.#agreeing, found.place);
    const { interruptsOff, undisturbed, lookedAt } = this.#around;
    this.accesses.push({
      ...found,
      mode,
      at,
      type: seenAs ?? type,
      value,
      within: this.#within,
      statement,
      interruptsOff,
      undisturbed: undisturbed || isAgreed,
      lookedAt,
    });
  }

  /** Reads that happen on the way to a place: indexes, and pointers that are followed. */
  #subscripts(expression: TypedExpression): void {
    switch (expression.kind) {
      case "index":
        this.#expression(expression.index, "read");
        if (placeOf(expression) === undefined) this.#expression(expression.array, "read");
        else this.#subscripts(expression.array);
        return;
      case "member":
        this.#subscripts(expression.object);
        return;
      case "convert":
        this.#subscripts(expression.operand);
        return;
      case "variable":
      case "this":
        return;
      case "dereference":
        if (expression.operand.kind !== "this") this.#expression(expression.operand, "read");
        return;
      default:
        this.#expression(expression, "read");
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

function isByte(type: Type): boolean {
  return type.kind === "integer" && type.bits === 8 && type.rank !== "bool";
}

export function isSamePlace(a: SharedPlace, b: SharedPlace): boolean {
  return a.variable === b.variable && a.field === b.field;
}

/** The place of `do { value = place; } while (value != place);` and of `do { a = place; b = place; } while (a != b);`. */
function agreedPlace(statement: TypedStatement): SharedPlace | undefined {
  if (statement.kind !== "do" && statement.kind !== "while") return undefined;
  const { condition } = statement;
  if (condition.kind !== "compare" || condition.operator !== "!=") return undefined;
  const [left, right] = [withoutConversions(condition.left), withoutConversions(condition.right)];
  const [place, other] = placeOf(left) === undefined ? [right, left] : [left, right];
  if (other.kind !== "variable" || outlivesCalls(other.variable)) return undefined;
  const found = placeOf(place)?.place;
  if (found !== undefined || place.kind !== "variable" || place.variable === other.variable) return found;
  const [one, two] = [place, other].map(({ variable }) => readInto(variable, statement.body));
  return one !== undefined && two !== undefined && isSamePlace(one, two) ? one : undefined;
}

/** The place that this local variable is set to, where the code sets it to no other. */
function readInto(variable: Variable, code: TypedStatement): SharedPlace | undefined {
  const set: (SharedPlace | undefined)[] = [];
  walkStatement(code, {
    expression: (expression) => {
      if (expression.kind !== "assign") return true;
      const target = withoutConversions(expression.target);
      if (target.kind === "variable" && target.variable === variable)
        set.push(placeOf(withoutConversions(expression.value))?.place);
      return true;
    },
  });
  const [first] = set;
  return set.every((each) => each !== undefined && first !== undefined && isSamePlace(each, first))
    ? first
    : undefined;
}

/** What stands behind the statement is come to only when its condition allows. */
function decidesWhatFollows(statement: TypedStatement): boolean {
  switch (statement.kind) {
    case "while":
    case "do":
      return true;
    case "if":
      return (
        alwaysLeaves(statement.then) ||
        (statement.otherwise !== undefined && alwaysLeaves(statement.otherwise))
      );
    default:
      return false;
  }
}

function alwaysLeaves(statement: TypedStatement): boolean {
  switch (statement.kind) {
    case "return":
    case "break":
    case "continue":
    case "goto":
      return true;
    case "block":
      return statement.statements.some(alwaysLeaves);
    default:
      return false;
  }
}

function together(before: readonly LookedAt[], added: readonly LookedAt[]): readonly LookedAt[] {
  return added.length === 0 ? before : [...before, ...added];
}
