import type { Span } from "../../finding.ts";
import { visibleRange } from "../../reader/tokens.ts";
import type { TypedExpression } from "../../reader/typed/nodes.ts";
import { delayOf } from "../board/delay-calls.ts";
import type { PinName } from "../pins/pin-change.ts";
import type { Event, LoopEvent, OutsideCall } from "../walk/events.ts";

/** What matters on the way of a byte onto a pin: levels, delays, and what may take any time. */
export type LineStep =
  | {
      readonly kind: "level";
      readonly pin: PinName;
      readonly level: 0 | 1 | undefined;
      readonly span: Span;
    }
  | {
      readonly kind: "delay";
      readonly us: number;
      readonly span: Span;
      readonly expression: TypedExpression | undefined;
    }
  | { readonly kind: "anything" };

const anything: LineStep = { kind: "anything" };

/** More turns of a loop, or more steps of a program, say nothing new about a byte of ten bits. */
const MOST_TURNS = 16;
const MOST_STEPS = 20_000;

/** Paths through lists of events: sides of a branch that take equally long are joined, loops are unrolled. */
export class LineSteps {
  readonly #clockHz: number | undefined;
  /** Calls that do what an earlier one did hold its events. */
  readonly #known = new Map<readonly Event[], readonly LineStep[]>();

  constructor(clockHz: number | undefined) {
    this.#clockHz = clockHz;
  }

  of(events: readonly Event[]): readonly LineStep[] {
    let steps = this.#known.get(events);
    if (steps === undefined) {
      steps = this.#path(events);
      this.#known.set(events, steps);
    }
    return steps;
  }

  #path(events: readonly Event[]): readonly LineStep[] {
    const steps: LineStep[] = [];
    for (const event of events) {
      if (steps.length > MOST_STEPS) return [...steps, anything];
      steps.push(...this.#stepsOf(event));
    }
    return steps;
  }

  #stepsOf(event: Event): readonly LineStep[] {
    switch (event.kind) {
      case "call":
        return this.of(event.events);
      case "branch":
        return joined(event.sides.map((side) => this.of(side)));
      case "loop":
        return unrolled(
          event,
          event.passes.map((pass) => this.of(pass)),
        );
      case "pin": {
        const { pin, before, after } = event.change;
        const turnsOnly = before.latch === after.latch && before.output !== after.output;
        const { first, last } = event.at;
        return turnsOnly ? [] : [{ kind: "level", pin, level: after.latch, span: visibleRange(first, last) }];
      }
      case "outside-call":
        return delayStep(event, this.#clockHz);
      case "not-followed":
        return [anything];
      default:
        return [];
    }
  }
}

function delayStep(call: OutsideCall, clockHz: number | undefined): readonly LineStep[] {
  const delay = delayOf(call, clockHz);
  if (delay === undefined) return [];
  if (delay.us === undefined) return [anything];
  const expression = delay.length?.from ?? call.expressions[0];
  const at = expression?.at ?? call.at;
  return [{ kind: "delay", us: delay.us, span: visibleRange(at.first, at.last), expression }];
}

function unrolled(loop: LoopEvent, passes: readonly (readonly LineStep[])[]): readonly LineStep[] {
  const last = passes.at(-1) ?? [];
  switch (loop.form) {
    case "waiting":
      return [anything];
    case "endless":
      return [anything, ...passes.flat(), anything];
    case "counted":
    case "unknown": {
      if (loop.idle) return [anything];
      const turns = Math.min(loop.turns ?? loop.atMost ?? MOST_TURNS / 2, MOST_TURNS);
      const left = Math.max(0, turns - passes.length);
      if (last.length * left > MOST_STEPS) return [anything];
      return [...passes.slice(0, turns).flat(), ...Array.from({ length: left }, () => last).flat()];
    }
  }
}

/** What all sides do alike; where only one does something, and that takes no time, its levels are not known. */
function joined(sides: readonly (readonly LineStep[])[]): readonly LineStep[] {
  const busy = sides.filter((side) => side.length > 0);
  const [first, ...others] = busy;
  if (first === undefined) return [];
  if (busy.length < sides.length) {
    return first.every((step) => step.kind === "level") && others.length === 0
      ? first.map((step) => (step.kind === "level" ? { ...step, level: undefined } : step))
      : [anything];
  }
  const steps: LineStep[] = [];
  for (const [index, step] of first.entries()) {
    const same = others.reduce<LineStep>((known, other) => common(known, other[index]), step);
    steps.push(same);
  }
  return others.every((other) => other.length === first.length) ? steps : [anything];
}

function common(a: LineStep, b: LineStep | undefined): LineStep {
  if (a.kind === "level" && b?.kind === "level" && a.pin === b.pin) {
    return a.level === b.level ? a : { ...a, level: undefined };
  }
  return a.kind === "delay" && b?.kind === "delay" && a.us === b.us ? a : anything;
}
