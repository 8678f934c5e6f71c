import type { ChunkSyntax, Place } from "../../../../src-core/reader/syntax/nodes.ts";

export type NotUnderstoodPart = ChunkSyntax["notUnderstood"][number];

/** A node as data: an object with a place, and the objects in it. */
export type PlacedNode = Place & Readonly<Record<string, unknown>>;

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null;
}

function isPlaced(value: unknown): value is PlacedNode {
  return isObject(value) && typeof value.first === "number" && typeof value.end === "number";
}

/** The nearest nodes with a place under a value; attributes may stand around what they belong to. */
export function placedWithin(value: unknown): readonly PlacedNode[] {
  if (Array.isArray(value)) return value.flatMap(placedUnder);
  if (!isObject(value)) return [];
  return Object.entries(value).flatMap(([name, inner]) => (name === "attributes" ? [] : placedUnder(inner)));
}

function placedUnder(value: unknown): readonly PlacedNode[] {
  return isPlaced(value) ? [value] : placedWithin(value);
}
