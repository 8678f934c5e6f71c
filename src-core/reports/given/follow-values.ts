import { evaluate } from "../../reader/constants/evaluate.ts";
import type { Program } from "../../reader/program/program.ts";
import type {
  ComparisonOperator,
  FunctionDefinition,
  FunctionSymbol,
  TypedExpression,
  TypedInitializer,
  TypedStatement,
  Variable,
} from "../../reader/typed/nodes.ts";
import { expressionsOf, operandsOf, walkExpression, walkStatement } from "../../reader/typed/walk.ts";
import { calledType } from "../../reader/types/derive.ts";
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
import { KnownPlaces, type Place, PlaceNames } from "./known-places.ts";

type Call = Extract<TypedExpression, { kind: "call" | "method-call" }>;

/** Nothing is known of what this does, so nothing of what comes behind it. */
export class NotFollowed extends Error {}

/** Expressions and statements looked at for one function and all that it calls. */
const mostSteps = 20_000;
/** Functions that are gone into for what they return, one inside the other. */
const deepestCall = 3;

/** Where a way through a function goes on after it left a loop or a `switch`. */
interface Breakable {
  broken: KnownPlaces | undefined;
}

/** Follows the whole numbers through a function, as far as limits can be told. */
export class ValueFollower {
  readonly names: PlaceNames;
  /** Called at each call of a function, before it is made. */
  readonly #met: (call: Call, values: ValueFollower, known: KnownPlaces) => void;
  readonly #program: Program;
  #steps = mostSteps;
  #depth = 0;
  #returned: Interval | undefined;
  readonly #inside: Breakable[] = [];

  constructor(program: Program, met: (call: Call, values: ValueFollower, known: KnownPlaces) => void) {
    this.#program = program;
    this.names = new PlaceNames(program);
    this.#met = met;
  }

  /** `given` by parameter. What it returns on any way; undefined where it never does. Throws `NotFollowed`. */
  follow(
    { body, parameters }: FunctionDefinition,
    given: readonly (Interval | undefined)[],
  ): Interval | undefined {
    const known = new KnownPlaces();
    for (const [index, parameter] of parameters.entries()) {
      const value = given[index];
      if (value !== undefined) known.set(this.names.ofVariable(parameter), value);
    }
    const outer = this.#returned;
    this.#returned = undefined;
    this.#statement(body, known);
    const returned = this.#returned;
    this.#returned = outer;
    return returned;
  }

  /** What an expression can be, all that it does done to `known`. */
  value(expression: TypedExpression, known: KnownPlaces): Interval {
    this.#step();
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
        this.#expose(expression.operand);
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
  #expose(object: TypedExpression): void {
    const place = this.names.placeOf(object);
    if (place?.root.reach === "local") place.root.reach = "behind";
  }

  #step(): void {
    this.#steps -= 1;
    if (this.#steps <= 0) throw new NotFollowed();
  }

  #variable(variable: Variable, known: KnownPlaces): Interval {
    const held = known.get(this.names.ofVariable(variable));
    if (held !== undefined) return held;
    const { initializer, type, constexpr } = this.#program.definingVariable(variable);
    if (initializer?.kind === "value" && (constexpr || type.const === true)) {
      const value = evaluate(initializer.value, this.#program.model);
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
      if (!this.#narrow(condition, wanted, there)) continue;
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
    return isSame(side, right) ? (where(value, turned[operator], other(left)) ?? value) : value;
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
  #narrow(condition: TypedExpression, wanted: boolean, known: KnownPlaces): boolean {
    switch (condition.kind) {
      case "not":
        return this.#narrow(condition.operand, !wanted, known);
      case "convert":
        return this.#narrow(condition.operand, wanted, known);
      case "logical":
        if ((condition.operator === "&&") !== wanted) return true;
        return this.#narrow(condition.left, wanted, known) && this.#narrow(condition.right, wanted, known);
      case "compare": {
        const { left, right } = condition;
        const operator = wanted ? condition.operator : opposite[condition.operator];
        const [before, limit] = [left, right].map((side) => this.value(side, new KnownPlaces(known)));
        if (before === undefined || limit === undefined) return true;
        return (
          this.#narrowSide(left, where(before, operator, limit), known) &&
          this.#narrowSide(right, where(limit, turned[operator], before), known)
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
    const symbol = call.kind === "method-call" ? call.method : functionOf(call.callee);
    const given = call.arguments.map((argument) => this.value(argument, known));
    if (call.kind === "method-call") this.value(call.object, known);
    else if (symbol === undefined) this.value(call.callee, known);
    this.#met(call, this, known);
    const result = symbol === undefined ? undefined : this.#returnedBy(symbol, given);
    forgetHandedOver(call, known, this.names);
    if (symbol?.standIn !== true) known.forgetShared();
    return result ?? ofType(call.type);
  }

  #returnedBy(symbol: FunctionSymbol, given: readonly Interval[]): Interval | undefined {
    const definition = this.#program.definitionOf(symbol)?.definition;
    if (definition === undefined || symbol.isVirtual || this.#depth >= deepestCall) return undefined;
    if (ofType(symbol.type.returns) === anything) return undefined;
    this.#depth += 1;
    const returned = this.follow(
      definition,
      definition.parameters.map(({ type }, index) => {
        const value = given[index];
        return value === undefined || ofType(type) === anything ? undefined : heldBy(value, type);
      }),
    );
    this.#depth -= 1;
    return returned;
  }

  /** Gives what is known behind it; undefined where no way comes there. */
  #statement(statement: TypedStatement, known: KnownPlaces): KnownPlaces | undefined {
    this.#step();
    switch (statement.kind) {
      case "block": {
        let now: KnownPlaces | undefined = known;
        for (const inner of statement.statements) {
          if (now === undefined) break;
          now = this.#statement(inner, now);
        }
        return now;
      }
      case "expression":
        this.value(statement.expression, known);
        return known;
      case "variables":
        for (const variable of statement.variables) this.#declare(variable, known);
        return known;
      case "if": {
        const { init, condition, then, otherwise } = statement;
        if (init !== undefined) this.#statement(init, known);
        this.value(condition, known);
        const side = (taken: TypedStatement | undefined, wanted: boolean): KnownPlaces | undefined => {
          const there = new KnownPlaces(known);
          if (!this.#narrow(condition, wanted, there)) return undefined;
          return taken === undefined ? there : this.#statement(taken, there);
        };
        return KnownPlaces.either(side(then, true), side(otherwise, false));
      }
      case "while":
      case "do":
      case "for":
        return this.#loop(statement, known);
      case "switch": {
        this.value(statement.condition, known);
        forgetChanged(statement.body, known, this.names);
        return this.#breakable(known, (start) => {
          const end = this.#cases(statement.body, start);
          return KnownPlaces.either(end, start);
        });
      }
      case "return": {
        const value = statement.value === undefined ? anything : this.value(statement.value, known);
        this.#returned = this.#returned === undefined ? value : hull(this.#returned, value);
        return undefined;
      }
      case "break": {
        const around = this.#inside.at(-1);
        if (around !== undefined) around.broken = KnownPlaces.either(around.broken, known);
        return undefined;
      }
      case "continue":
        return undefined;
      case "empty":
        return known;
      case "range-for":
      case "case":
      case "default":
      case "label":
      case "goto":
      case "assembly":
      case "not-understood":
        throw new NotFollowed();
    }
  }

  #declare(variable: Variable, known: KnownPlaces): void {
    const { initializer, storage } = variable;
    if (initializer === undefined) return;
    const place = this.names.ofVariable(variable);
    if (initializer.kind === "value") {
      const value = this.value(initializer.value, known);
      if (variable.type.kind === "reference") this.#expose(initializer.value);
      if (storage === "local" && ofType(variable.type) !== anything) {
        known.set(place, heldBy(value, variable.type));
      }
      return;
    }
    this.#members(initializer, place, storage === "local", known);
    if (initializer.kind === "constructor") known.forgetShared();
  }

  #members(initializer: TypedInitializer, { key, root }: Place, isLocal: boolean, known: KnownPlaces): void {
    if (initializer.kind !== "aggregate") {
      for (const each of expressionsOf(initializer)) this.value(each, known);
      return;
    }
    for (const { target, initializer: inner } of initializer.entries) {
      if (!("name" in target) || inner.kind !== "value") {
        this.#members(inner, { key, root }, false, known);
        continue;
      }
      const value = this.value(inner.value, known);
      if (isLocal) known.set({ key: `${key}.${target.name}`, root }, heldBy(value, target.type));
    }
  }

  /** One turn stands for all: what any turn changes is not known at its start. */
  #loop(
    loop: Extract<TypedStatement, { kind: "while" | "do" | "for" }>,
    known: KnownPlaces,
  ): KnownPlaces | undefined {
    if (loop.kind === "for" && loop.init !== undefined) this.#statement(loop.init, known);
    forgetChanged(loop, known, this.names);
    return this.#breakable(known, (start) => {
      if (loop.kind === "while" && loop.declared !== undefined) this.#statement(loop.declared, start);
      const { condition } = loop;
      if (condition !== undefined) this.value(condition, start);
      const behind = new KnownPlaces(start);
      const goesOn = loop.kind === "do" || condition === undefined || this.#narrow(condition, true, start);
      if (goesOn) this.#statement(loop.body, start);
      if (loop.kind === "for" && loop.step !== undefined) this.value(loop.step, new KnownPlaces(behind));
      return condition !== undefined && this.#narrow(condition, false, behind) ? behind : undefined;
    });
  }

  #breakable(
    known: KnownPlaces,
    follow: (start: KnownPlaces) => KnownPlaces | undefined,
  ): KnownPlaces | undefined {
    const around: Breakable = { broken: undefined };
    this.#inside.push(around);
    const end = follow(known);
    this.#inside.pop();
    return KnownPlaces.either(end, around.broken);
  }

  /** The statements of a `switch`; each label is come to with what was known in front of it. */
  #cases(body: TypedStatement, start: KnownPlaces): KnownPlaces | undefined {
    let now: KnownPlaces | undefined;
    for (let statement of body.kind === "block" ? body.statements : [body]) {
      while (statement.kind === "case" || statement.kind === "default") {
        now = new KnownPlaces(start);
        if (statement.body === undefined) break;
        statement = statement.body;
      }
      if (now !== undefined && statement.kind !== "case" && statement.kind !== "default") {
        now = this.#statement(statement, now);
      }
    }
    return now;
  }
}

const opposite: Readonly<Record<ComparisonOperator, ComparisonOperator>> = {
  "<": ">=",
  ">": "<=",
  "<=": ">",
  ">=": "<",
  "==": "!=",
  "!=": "==",
};

/** The operator with the sides exchanged. */
const turned: Readonly<Record<ComparisonOperator, ComparisonOperator>> = {
  "<": ">",
  ">": "<",
  "<=": ">=",
  ">=": "<=",
  "==": "==",
  "!=": "!=",
};

export function functionOf(callee: TypedExpression): FunctionSymbol | undefined {
  return callee.kind === "function" ? callee.function : undefined;
}

/** Two expressions that say the same, conversions aside. */
function isSame(one: TypedExpression, other: TypedExpression): boolean {
  const [a, b] = [bare(one), bare(other)];
  if (a.kind === "variable") return b.kind === "variable" && a.variable === b.variable;
  if (a.kind === "integer") return b.kind === "integer" && a.value === b.value;
  if (a.kind === "member" && (b.kind !== "member" || a.field !== b.field)) return false;
  if ("operator" in a && (!("operator" in b) || a.operator !== b.operator)) return false;
  const [inside, others] = [operandsOf(a), operandsOf(b)];
  const isLeaf = inside.length === 0 && a.kind !== "this";
  return (
    a.kind === b.kind &&
    !isLeaf &&
    inside.length === others.length &&
    inside.every((operand, index) => {
      const also = others[index];
      return also !== undefined && isSame(operand, also);
    })
  );
}

function bare(expression: TypedExpression): TypedExpression {
  return expression.kind === "convert" ? bare(expression.operand) : expression;
}

function changesSomething(expression: TypedExpression): boolean {
  let changes = false;
  walkExpression(expression, {
    expression({ kind }) {
      changes ||= kind === "assign" || kind === "compound-assign" || kind === "update";
      changes ||= kind === "call" || kind === "method-call";
      return !changes;
    },
  });
  return changes;
}

/** What a call may store into: objects that it gets by reference, and those whose address it gets. */
function forgetHandedOver(call: Call, known: KnownPlaces, names: PlaceNames): void {
  const called = call.kind === "method-call" ? call.method.type : calledType(call.callee.type);
  for (const [index, argument] of call.arguments.entries()) {
    const parameter = called?.parameters[index];
    const isWay =
      parameter === undefined ||
      ((parameter.kind === "reference" || parameter.kind === "pointer") && parameter.to.const !== true);
    const place = isWay ? names.placeOf(argument) : undefined;
    if (place !== undefined) known.forget(place);
  }
}

/** Forgets all that a statement may change however often it is run. */
function forgetChanged(statement: TypedStatement, known: KnownPlaces, names: PlaceNames): void {
  const forget = (target: TypedExpression): void => {
    const place = names.placeOf(target);
    if (place === undefined) known.forgetShared();
    else known.forget(place);
  };
  walkStatement(statement, {
    expression(expression) {
      if (expression.kind === "assign" || expression.kind === "compound-assign") forget(expression.target);
      else if (expression.kind === "update") forget(expression.operand);
      else if (expression.kind === "call" || expression.kind === "method-call") {
        known.forgetShared();
        forgetHandedOver(expression, known, names);
      }
      return true;
    },
  });
}
