import { ChunkCache } from "../chunks/chunk.ts";
import { PreprocessCache } from "../preprocess/preprocess-cache.ts";
import { SyntaxCache } from "../syntax/syntax-cache.ts";
import type { ProgramUnit } from "./program.ts";
import type { HostJournal } from "./recording-host.ts";

/** A unit of last time, and what has to be as it was for it to stand. */
export interface KeptUnit {
  /** The request and the surroundings it was read in, as text. */
  readonly circumstances: string;
  readonly journal: HostJournal;
  readonly unit: ProgramUnit;
}

/** What is kept between readings of one project: lexed files, parsed chunks, whole units. */
export class ProgramCache {
  readonly preprocess = new PreprocessCache();
  readonly chunks = new ChunkCache();
  readonly syntax = new SyntaxCache();
  /** By main files. */
  readonly units = new Map<string, KeptUnit>();
}
