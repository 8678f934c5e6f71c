import type { TypedStatement, Variable } from "../../reader/typed/nodes.ts";
import { endingOf, mayHaveEnding } from "./endings.ts";
import { callFunction } from "./inlining.ts";
import type { Machine } from "./machine.ts";

/** Notes that a variable lives from here on, if anything happens when it ends. */
export function beginObject(machine: Machine, variable: Variable): void {
  const ending = mayHaveEnding(variable) ? endingOf(variable, machine.linkage) : undefined;
  if (ending !== undefined) machine.living.push({ variable, ending });
}

/** Ends what was declared in a statement behind which it is not known any more. */
export function endScope(machine: Machine, { kind }: TypedStatement, outer: number): void {
  if (kind === "variables" || kind === "case" || kind === "default" || kind === "label") return;
  if (machine.alive) endObjects(machine, outer);
  machine.living.length = outer;
}

/**
 * Ends all but so many outer objects, the last one first (C++11 6.6p2). They are still noted as living afterwards, for
 * the paths that go on.
 */
export function endObjects(machine: Machine, outer: number): void {
  for (const { variable, ending } of machine.living.slice(outer).reverse()) {
    if (!machine.alive) return;
    const { at } = variable;
    if (ending.standIn) {
      // Those of `ATOMIC_BLOCK` only look at what they are given.
      machine.emit({ ...outside, at, name: ending.name, function: ending });
      continue;
    }
    const place = machine.placeOf(variable);
    const isDestructor = ending.special === "destructor";
    const calling = {
      at,
      type: ending.type.returns,
      expressions: [],
      arguments: isDestructor ? [] : [{ kind: "address", place, from: undefined } as const],
      object: isDestructor ? place : undefined,
    };
    callFunction(machine, ending, calling, ending.name);
  }
}

const outside = {
  kind: "outside-call",
  origin: "core",
  object: undefined,
  arguments: [],
  expressions: [],
  contents: undefined,
} as const;
