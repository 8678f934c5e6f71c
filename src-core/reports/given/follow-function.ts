import type { Program } from "../../reader/program/program.ts";
import type {
  FunctionDefinition,
  FunctionSymbol,
  TypedInitializer,
  TypedStatement,
  Variable,
} from "../../reader/typed/nodes.ts";
import { expressionsOf } from "../../reader/typed/walk.ts";
import type { Call } from "./expressions.ts";
import { forgetChanged } from "./forget-changed.ts";
import { anything, heldBy, hull, type Interval, ofType } from "./interval.ts";
import { KnownPlaces, type Place } from "./known-places.ts";
import { type Following, NotFollowed, ValueReader } from "./read-values.ts";

/** Expressions and statements looked at for one function and all that it calls. */
const mostSteps = 20_000;
/** Functions that are gone into for what they return, one inside the other. */
const deepestCall = 3;

/** Where a way through a function goes on after it left a loop or a `switch`. */
interface Breakable {
  broken: KnownPlaces | undefined;
}

/** Follows the whole numbers through a function, as far as limits can be told. */
export class FunctionFollower implements Following {
  readonly program: Program;
  readonly values: ValueReader;
  readonly #met: (call: Call, values: ValueReader, known: KnownPlaces) => void;
  #steps = mostSteps;
  #depth = 0;
  #returned: Interval | undefined;
  readonly #inside: Breakable[] = [];

  /** `met` is called at each call of a function, before it is made. */
  constructor(program: Program, met: (call: Call, values: ValueReader, known: KnownPlaces) => void) {
    this.program = program;
    this.values = new ValueReader(this);
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
      if (value !== undefined) known.set(this.values.names.ofVariable(parameter), value);
    }
    const outer = this.#returned;
    this.#returned = undefined;
    this.#statement(body, known);
    const returned = this.#returned;
    this.#returned = outer;
    return returned;
  }

  step(): void {
    this.#steps -= 1;
    if (this.#steps <= 0) throw new NotFollowed();
  }

  met(call: Call, known: KnownPlaces): void {
    this.#met(call, this.values, known);
  }

  returnedBy(symbol: FunctionSymbol, given: readonly Interval[]): Interval | undefined {
    const definition = this.program.definitionOf(symbol)?.definition;
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
    this.step();
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
        this.values.value(statement.expression, known);
        return known;
      case "variables":
        for (const variable of statement.variables) this.#declare(variable, known);
        return known;
      case "if": {
        const { init, condition, then, otherwise } = statement;
        if (init !== undefined) this.#statement(init, known);
        this.values.value(condition, known);
        const side = (taken: TypedStatement | undefined, wanted: boolean): KnownPlaces | undefined => {
          const there = new KnownPlaces(known);
          if (!this.values.narrow(condition, wanted, there)) return undefined;
          return taken === undefined ? there : this.#statement(taken, there);
        };
        return KnownPlaces.either(side(then, true), side(otherwise, false));
      }
      case "while":
      case "do":
      case "for":
        return this.#loop(statement, known);
      case "switch": {
        this.values.value(statement.condition, known);
        forgetChanged(statement.body, known, this.values.names);
        return this.#breakable(known, (start) => {
          const end = this.#cases(statement.body, start);
          return KnownPlaces.either(end, start);
        });
      }
      case "return": {
        const value = statement.value === undefined ? anything : this.values.value(statement.value, known);
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
    const place = this.values.names.ofVariable(variable);
    if (initializer.kind === "value") {
      const value = this.values.value(initializer.value, known);
      if (variable.type.kind === "reference") this.values.expose(initializer.value);
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
      for (const each of expressionsOf(initializer)) this.values.value(each, known);
      return;
    }
    for (const { target, initializer: inner } of initializer.entries) {
      if (!("name" in target) || inner.kind !== "value") {
        this.#members(inner, { key, root }, false, known);
        continue;
      }
      const value = this.values.value(inner.value, known);
      if (isLocal) known.set({ key: `${key}.${target.name}`, root }, heldBy(value, target.type));
    }
  }

  /** One turn stands for all: what any turn changes is not known at its start. */
  #loop(
    loop: Extract<TypedStatement, { kind: "while" | "do" | "for" }>,
    known: KnownPlaces,
  ): KnownPlaces | undefined {
    if (loop.kind === "for" && loop.init !== undefined) this.#statement(loop.init, known);
    forgetChanged(loop, known, this.values.names);
    return this.#breakable(known, (start) => {
      if (loop.kind === "while" && loop.declared !== undefined) this.#statement(loop.declared, start);
      const { condition } = loop;
      if (condition !== undefined) this.values.value(condition, start);
      const behind = new KnownPlaces(start);
      const goesOn =
        loop.kind === "do" || condition === undefined || this.values.narrow(condition, true, start);
      if (goesOn) this.#statement(loop.body, start);
      if (loop.kind === "for" && loop.step !== undefined)
        this.values.value(loop.step, new KnownPlaces(behind));
      return condition !== undefined && this.values.narrow(condition, false, behind) ? behind : undefined;
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
