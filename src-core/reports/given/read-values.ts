import { evaluate } from "../../reader/constants/evaluate.ts";
import type { Program } from "../../reader/program/program.ts";
import { mirrored, opposite } from "../../reader/typed/comparisons.ts";
import { functionCalled } from "../../reader/typed/function-called.ts";
import type { FunctionSymbol, TypedExpression, Variable } from "../../reader/typed/nodes.ts";
import { operandsOf } from "../../reader/typed/walk.ts";
import { type Call, changesSomething, isSame } from "./expressions.ts";
import { forgetHandedOver } from "./forget-changed.ts";
import {
  anything,
  computed,
  exactly,
  heldBy,
  hull,
  type Interval,
  ofType,
  truth,
  where,
} from "./interval.ts";
import { KnownPlaces, PlaceNames } from "./known-places.ts";

/** Nothing is known of what this does, so nothing of what comes behind it. */
export class NotFollowed extends Error {}

/** Whoever follows the code in which values are read. */
export interface Following {
  readonly program: Program;
  /** An expression or a statement is looked at. Throws `NotFollowed` where that is too much. */
  step(): void;
  /** A function is about to be called. */
  met(call: Call, known: KnownPlaces): void;
  /** What a function returns, given this by parameter; undefined where that is not known. */
  returnedBy(symbol: FunctionSymbol, given: readonly Interval[]): Interval | undefined;
}

/** Reads the whole numbers that expressions can be, as far as limits can be told. */
export class ValueReader {
  readonly names: PlaceNames;
  readonly #following: Following;

  constructor(following: Following) {
    this.#following = following;
    this.names = new PlaceNames(following.program);
  }

  /** What an expression can be, all that it does done to `known`. */
  value(expression: TypedExpression, known: KnownPlaces): Interval {
    this.#following.step();
    switch (expression.kind) {
      case "integer":
        return exactly(Number(expression.value));
      case "enumerator":
        return expression.enumerator.value === undefined
          ? ofType(expression.type)
          : exactly(Number(expression.enumerator.value));
      case "variable":
        return this.#variable(expression.variable, known);
      case "member":
      case "index":
      case "dereference":
        for (const operand of operandsOf(expression)) this.value(operand, known);
        return this.#held(expression, known);
      case "convert":
        return heldBy(this.value(expression.operand, known), expression.type);
      case "plus":
        return this.value(expression.operand, known);
      case "negate": {
        const { min, max } = this.value(expression.operand, known);
        return heldBy({ min: -max, max: -min }, expression.type);
      }
      case "arithmetic": {
        const left = this.value(expression.left, known);
        return heldBy(
          computed(expression.operator, left, this.value(expression.right, known)),
          expression.type,
        );
      }
      case "comma":
        this.value(expression.left, known);
        return this.value(expression.right, known);
      case "assign": {
        const value = this.value(expression.value, known);
        this.#store(expression.target, value, known);
        return value;
      }
      case "compound-assign": {
        const before = this.value(expression.target, known);
        const after = computed(expression.operator, before, this.value(expression.value, known));
        const value = heldBy(heldBy(after, expression.computeIn), expression.target.type);
        this.#store(expression.target, value, known);
        return value;
      }
      case "update": {
        const before = this.value(expression.operand, known);
        const after = computed(expression.operator === "++" ? "+" : "-", before, exactly(1));
        const value = heldBy(after, expression.operand.type);
        this.#store(expression.operand, value, known);
        return expression.position === "prefix" ? value : before;
      }
      case "conditional":
        return this.#conditional(expression, known);
      case "logical":
        this.value(expression.left, known);
        this.#either(known, expression.right);
        return truth;
      case "compare":
      case "not":
        for (const operand of operandsOf(expression)) this.value(operand, known);
        return truth;
      case "call":
      case "method-call":
        return this.#call(expression, known);
      case "address": {
        this.value(expression.operand, known);
        this.expose(expression.operand);
        return anything;
      }
      case "statement-value":
      case "lambda":
        throw new NotFollowed();
      default:
        for (const operand of operandsOf(expression)) this.value(operand, known);
        if (expression.kind === "construct" || expression.kind === "unresolved") known.forgetShared();
        return ofType(expression.type);
    }
  }

  /** From here on somebody else may have a way to it. */
  expose(object: TypedExpression): void {
    const place = this.names.placeOf(object);
    if (place?.root.reach === "local") place.root.reach = "behind";
  }

  #variable(variable: Variable, known: KnownPlaces): Interval {
    const held = known.get(this.names.ofVariable(variable));
    if (held !== undefined) return held;
    const { initializer, type, constexpr } = this.#following.program.definingVariable(variable);
    if (initializer?.kind === "value" && (constexpr || type.const === true)) {
      const value = evaluate(initializer.value, this.#following.program.model);
      if (value.kind === "integer") return exactly(Number(value.value));
    }
    return ofType(type.kind === "reference" ? type.to : type);
  }

  #held(expression: TypedExpression, known: KnownPlaces): Interval {
    const place = this.names.placeOf(expression);
    return (place && known.get(place)) ?? ofType(expression.type);
  }

  #store(target: TypedExpression, value: Interval, known: KnownPlaces): void {
    const place = this.names.placeOf(target);
    if (place === undefined) {
      known.forgetShared();
      return;
    }
    known.forget(place);
    if (target.type.volatile === true || ofType(target.type) === anything) return;
    known.set(place, heldBy(value, target.type));
  }

  #conditional(
    { condition, then, otherwise, type }: Extract<TypedExpression, { kind: "conditional" }>,
    known: KnownPlaces,
  ): Interval {
    this.value(condition, known);
    let result: Interval | undefined;
    for (const [side, wanted] of [
      [then, true],
      [otherwise, false],
    ] as const) {
      const there = new KnownPlaces(known);
      if (!this.narrow(condition, wanted, there)) continue;
      const value = this.#asCompared(side, condition, wanted, there);
      result = result === undefined ? value : hull(result, value);
    }
    for (const side of [then, otherwise]) if (changesSomething(side)) this.#either(known, side);
    return result ?? ofType(type);
  }

  /** What one side of `?:` can be, where the condition compared just that: `a < b ? a : b`. */
  #asCompared(
    side: TypedExpression,
    condition: TypedExpression,
    wanted: boolean,
    known: KnownPlaces,
  ): Interval {
    const value = this.value(side, known);
    if (condition.kind !== "compare" || changesSomething(condition)) return value;
    const { left, right } = condition;
    const operator = wanted ? condition.operator : opposite[condition.operator];
    const other = (of: TypedExpression): Interval => this.value(of, new KnownPlaces(known));
    if (isSame(side, left)) return where(value, operator, other(right)) ?? value;
    return isSame(side, right) ? (where(value, mirrored[operator], other(left)) ?? value) : value;
  }

  /** Something that may be done or not: what it stores is not known any more. */
  #either(known: KnownPlaces, expression: TypedExpression): void {
    const done = new KnownPlaces(known);
    this.value(expression, done);
    for (const place of known.places()) {
      const after = done.get(place);
      const before = known.get(place);
      if (after === undefined) known.forget(place);
      else if (before !== undefined) known.set(place, hull(before, after));
    }
  }

  /** Takes over what a condition says once it came out so; false where it cannot. */
  narrow(condition: TypedExpression, wanted: boolean, known: KnownPlaces): boolean {
    switch (condition.kind) {
      case "not":
        return this.narrow(condition.operand, !wanted, known);
      case "convert":
        return this.narrow(condition.operand, wanted, known);
      case "logical":
        if ((condition.operator === "&&") !== wanted) return true;
        return this.narrow(condition.left, wanted, known) && this.narrow(condition.right, wanted, known);
      case "compare": {
        const { left, right } = condition;
        const operator = wanted ? condition.operator : opposite[condition.operator];
        const [before, limit] = [left, right].map((side) => this.value(side, new KnownPlaces(known)));
        if (before === undefined || limit === undefined) return true;
        return (
          this.#narrowSide(left, where(before, operator, limit), known) &&
          this.#narrowSide(right, where(limit, mirrored[operator], before), known)
        );
      }
      default:
        return true;
    }
  }

  #narrowSide(side: TypedExpression, left: Interval | undefined, known: KnownPlaces): boolean {
    if (left === undefined) return false;
    if (side.kind === "convert") {
      // A conversion that changes nothing says as much of what is converted.
      const inner = this.value(side.operand, new KnownPlaces(known));
      const all = ofType(side.type);
      if (inner.min < all.min || inner.max > all.max) return true;
      return this.#narrowSide(side.operand, left, known);
    }
    const place = side.lvalue ? this.names.placeOf(side) : undefined;
    if (place !== undefined) known.set(place, left);
    return true;
  }

  #call(call: Call, known: KnownPlaces): Interval {
    const symbol = functionCalled(call);
    const given = call.arguments.map((argument) => this.value(argument, known));
    if (call.kind === "method-call") this.value(call.object, known);
    else if (symbol === undefined) this.value(call.callee, known);
    this.#following.met(call, known);
    const result = symbol === undefined ? undefined : this.#following.returnedBy(symbol, given);
    forgetHandedOver(call, known, this.names);
    if (symbol?.standIn !== true) known.forgetShared();
    return result ?? ofType(call.type);
  }
}
