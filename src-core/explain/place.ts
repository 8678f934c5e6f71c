import type { Facts } from "../facts/facts.ts";
import type { ProgramUnit } from "../reader/program/program.ts";
import type { TriedReport } from "../trial-details.ts";

/** A place in the code that somebody points at. */
export interface Place {
  readonly facts: Facts;
  /** A unit that reads the file. */
  readonly unit: ProgramUnit;
  readonly file: string;
  /** UTF-16 offset in the file. */
  readonly offset: number;
  /** What running encoders and decoders showed; undefined where they were not run. */
  readonly tried: readonly TriedReport[] | undefined;
}
