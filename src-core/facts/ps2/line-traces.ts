import type { Chip } from "../../model/chips/chip.ts";
import type { TypedStatement, Variable } from "../../reader/typed/nodes.ts";
import { walkStatement } from "../../reader/typed/walk.ts";
import type { Field } from "../../reader/types/types.ts";
import { pinsOfVector } from "../pins/pin-names.ts";
import { allEffects, type Effects, functionEffects } from "../walk/effects.ts";
import type { EntryWalk, Walk } from "../walk/events.ts";
import type { Trace } from "../walk/values.ts";
import { interruptPin, pinsLookedAt } from "./handler-pins.ts";
import type { PortPins } from "./port-pins.ts";
import type { Line } from "./ps2-facts.ts";
import { pinOfTrace } from "./watched-pins.ts";

/** What of the PS/2 port a value depends on: the level of a line, or what only the clock's handler writes. */
export type LineTrace =
  | { readonly kind: "level"; readonly line: Line }
  | { readonly kind: "handled"; readonly name: string };

interface Named {
  readonly variables: readonly Variable[];
  readonly fields: readonly Field[];
}

const known = new WeakMap<TypedStatement, Named>();

/** What a body names; kept with the body, which never changes. */
function namedIn(body: TypedStatement): Named {
  let named = known.get(body);
  if (named === undefined) {
    const variables = new Set<Variable>();
    const fields = new Set<Field>();
    walkStatement(body, {
      expression(expression) {
        if (expression.kind === "variable") variables.add(expression.variable);
        if (expression.kind === "member") fields.add(expression.field);
        return true;
      },
    });
    named = { variables: [...variables], fields: [...fields] };
    known.set(body, named);
  }
  return named;
}

/** Tells which values depend on the PS/2 lines, and which handlers the clock runs. */
export class LineTraces {
  readonly #chip: Chip | undefined;
  readonly #pins: PortPins;
  readonly #walk: Walk;
  /** Interrupt handlers that an edge of a line runs. */
  readonly handlers: readonly EntryWalk[];
  readonly #usedIn = new Map<TypedStatement, boolean>();
  #written: { readonly byLine: Effects; readonly byOthers: Effects } | undefined;

  constructor(walk: Walk, pins: PortPins, chip: Chip | undefined) {
    this.#walk = walk;
    this.#pins = pins;
    this.#chip = chip;
    this.handlers = walk.entries.filter((each) => this.#isHandler(each));
  }

  /** Undefined for what has nothing to do with the port, or may have to do with something else as well. */
  of(trace: Trace): LineTrace | undefined {
    if (trace.kind === "shared") {
      const { variable, field } = trace;
      if (!this.isHandled(variable, field)) return undefined;
      return { kind: "handled", name: (variable ?? field)?.name ?? "" };
    }
    const line = this.lineOf(trace);
    return line === undefined ? undefined : { kind: "level", line };
  }

  /** The line whose level this is. */
  lineOf(trace: Trace): Line | undefined {
    const pin = pinOfTrace(this.#chip, trace);
    if (pin === undefined) return undefined;
    if (pin === this.#pins.clock?.pin) return "clock";
    return pin === this.#pins.data?.pin ? "data" : undefined;
  }

  /** Handlers that an edge of a line runs write it, and no other handler does. */
  isHandled(variable: Variable | undefined, field: Field | undefined): boolean {
    const { byLine, byOthers } = this.#effects();
    if (variable !== undefined) return byLine.variables.has(variable) && !byOthers.variables.has(variable);
    return field !== undefined && byLine.fields.has(field) && !byOthers.fields.has(field);
  }

  /** Whether a body names something that only handlers of the lines write. */
  areUsedIn(body: TypedStatement): boolean {
    let used = this.#usedIn.get(body);
    if (used === undefined) {
      used = this.#nameHandled(body);
      this.#usedIn.set(body, used);
    }
    return used;
  }

  #nameHandled(body: TypedStatement): boolean {
    const { linkage } = this.#walk;
    const { variables, fields } = namedIn(body);
    return (
      variables.some((variable) => this.isHandled(linkage.canonical(variable), undefined)) ||
      fields.some((field) => this.isHandled(undefined, linkage.canonicalField(field)))
    );
  }

  #effects(): { readonly byLine: Effects; readonly byOthers: Effects } {
    if (this.#written === undefined) {
      const { linkage, entries } = this.#walk;
      const effectsOf = (some: readonly EntryWalk[]): Effects =>
        allEffects(
          some.map(({ entry }) => functionEffects(entry.function, linkage)),
          linkage,
        );
      const interrupts = entries.filter(({ entry }) => entry.kind === "interrupt");
      this.#written = {
        byLine: effectsOf(this.handlers),
        byOthers: effectsOf(interrupts.filter((each) => !this.handlers.includes(each))),
      };
    }
    return this.#written;
  }

  #isHandler(each: EntryWalk): boolean {
    const { entry, events } = each;
    const { clock, data } = this.#pins;
    if (entry.kind !== "interrupt" || clock === undefined) return false;
    const pin = interruptPin(entry, this.#walk.entries, this.#chip);
    if (pin !== undefined) return pin === clock.pin || pin === data?.pin;
    // A vector that several pins share, or one of a chip that is not known; a timer's handler may look as well.
    const served = entry.vector === undefined ? [] : pinsOfVector(this.#chip, entry.vector);
    const isPins = served.includes(clock.pin) || /^(P?CINT|INT)\d/.test(entry.vector ?? "");
    return isPins && pinsLookedAt(events, this.#chip).some((seen) => seen === data?.pin);
  }
}
