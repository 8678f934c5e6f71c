import type { Edge, Level, WireName } from "../bench/wires/edge.ts";

export type LevelChange = Pick<Edge, "time" | "wire" | "level">;

/** A wire's level before all its edges: the opposite of what the first one makes of it; at rest without one. */
export function levelAtStart(wire: WireName, edges: readonly LevelChange[]): Level {
  const first = edges.find((edge) => edge.wire === wire);
  return first?.level === 1 ? 0 : 1;
}
