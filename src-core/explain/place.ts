import type { Facts } from "../facts/facts.ts";
import type { ProgramUnit } from "../reader/program/program.ts";

/** A place in the code that somebody points at. */
export interface Place {
  readonly facts: Facts;
  /** A unit that reads the file. */
  readonly unit: ProgramUnit;
  readonly file: string;
  /** UTF-16 offset in the file. */
  readonly offset: number;
}
