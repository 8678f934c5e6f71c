import type { FunctionSymbol } from "../../reader/typed/nodes.ts";
import type { Machine, RepeatableCall } from "./machine.ts";
import type { Place } from "./places.ts";
import { sameTrace } from "./unknowns.ts";
import type { Value } from "./values.ts";

/**
 * Functions that wait for an edge or read a pin are called dozens of times with the same arguments. Where such a
 * call touches nothing outside itself, it is walked once; its events then stand in several calls, and the chain
 * in them is that of the first.
 */

/** Calls of one function that are remembered. */
const mostCalls = 8;

export function repeatable(
  machine: Machine,
  symbol: FunctionSymbol,
  calling: { readonly arguments: readonly Value[]; readonly object: Place | undefined },
): RepeatableCall | undefined {
  return machine.repeats
    .get(symbol)
    ?.find((call) => call.object === calling.object && sameArguments(call.arguments, calling.arguments));
}

export function remember(machine: Machine, symbol: FunctionSymbol, call: RepeatableCall): void {
  const known = machine.repeats.get(symbol);
  if (known === undefined) machine.repeats.set(symbol, [call]);
  else if (known.length < mostCalls) known.push(call);
}

function sameArguments(a: readonly Value[], b: readonly Value[]): boolean {
  if (a.length !== b.length) return false;
  for (const [index, value] of a.entries()) {
    const other = b[index];
    if (other === undefined || !alike(value, other)) return false;
  }
  return true;
}

/** Whether a call cannot tell two values apart, where they were written included. */
function alike(a: Value, b: Value): boolean {
  if (a === b) return true;
  switch (a.kind) {
    case "integer":
    case "floating":
      return b.kind === a.kind && b.value === a.value && b.from === a.from;
    case "address":
      return b.kind === "address" && b.place === a.place;
    case "function":
      return b.kind === "function" && b.function === a.function;
    case "unknown":
      return (
        b.kind === "unknown" &&
        b.known === a.known &&
        b.ones === a.ones &&
        b.copied === undefined &&
        a.copied === undefined &&
        b.compared === undefined &&
        a.compared === undefined &&
        b.traces.length === a.traces.length &&
        b.traces.every((trace, index) => {
          const other = a.traces[index];
          return other !== undefined && sameTrace(trace, other);
        })
      );
  }
}
