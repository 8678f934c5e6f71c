import type { Token } from "../../tokens.ts";
import type { ChunkNames } from "../names/names.ts";
import { items } from "./items.ts";
import type { Presentation } from "./presentation.ts";
import { deepestNesting, Scan, TooDeep } from "./scan.ts";

/** Reads the outline of a chunk at file level; undefined where it is nested too deeply to be read. */
export function presentChunk(tokens: readonly Token[], names: ChunkNames): Presentation | undefined {
  const scan = new Scan(tokens, names);
  if (scan.nesting > deepestNesting) return undefined;
  try {
    items(scan, 0, scan.length, "file");
  } catch (error) {
    if (error instanceof TooDeep) return undefined;
    throw error;
  }
  return scan.presentation;
}
