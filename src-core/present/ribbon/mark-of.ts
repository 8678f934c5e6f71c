import type { Mark, MarkKind } from "./ribbon.ts";

/** A mark for one thing. */
export function markOf(
  kind: MarkKind,
  from: number,
  to: number,
  said: Pick<Mark, "texts" | "detail"> & Partial<Pick<Mark, "isFault" | "tone" | "place" | "count">>,
): Mark {
  return { kind, from, to, isFault: false, tone: 0, place: undefined, count: 1, ...said };
}
