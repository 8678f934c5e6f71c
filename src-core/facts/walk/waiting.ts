import { delayOf } from "../board/delay-calls.ts";
import type { Event } from "./events.ts";
import { everyEvent } from "./in-order.ts";
import { joinTraces, tracesOf } from "./unknowns.ts";
import type { Trace, Value } from "./values.ts";

/** Functions of the sketch core and the chip's library that only look, or that let the chip rest. */
const harmless: ReadonlySet<string> = new Set([
  "digitalRead",
  "analogRead",
  "millis",
  "micros",
  "yield",
  "wdt_reset",
  "sleep_cpu",
  "sleep_mode",
  "__interrupts_off",
  "__interrupts_on",
  "__builtin_avr_nop",
  "__builtin_avr_wdr",
  "__builtin_avr_sleep",
]);

/** What the loop's condition depends on, and the conditions under which a path leaves it. */
export function waitsFor(
  condition: Value | undefined,
  passes: readonly (readonly Event[])[],
): readonly Trace[] {
  let traces = condition === undefined ? [] : tracesOf(condition);
  for (const event of passes[passes.length - 1] ?? []) {
    if (event.kind !== "branch" || event.condition === undefined) continue;
    if (event.sides.some((side) => side.some(({ kind }) => kind === "leave"))) {
      traces = joinTraces(traces, tracesOf(event.condition));
    }
  }
  return traces.filter((trace) => trace.kind !== "parameter");
}

/** Whether a loop does nothing but look at what changes by itself. */
export function isWaiting(traces: readonly Trace[], passes: readonly (readonly Event[])[]): boolean {
  return traces.length > 0 && passes.every((pass) => everyEvent(pass, isHarmless));
}

function isHarmless(event: Event): boolean {
  switch (event.kind) {
    case "register-read":
    case "branch":
    case "call":
    case "leave":
    case "label":
    case "time-test":
    case "assembly":
      return true;
    case "outside-call":
      return harmless.has(event.name) || delayOf(event, undefined) !== undefined;
    case "loop":
      return event.form === "waiting" || event.form === "counted";
    case "register-write":
    case "pin":
    case "not-followed":
      return false;
  }
}
