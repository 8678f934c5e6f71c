import type { At } from "../../reader/typed/nodes.ts";
import type { Stop } from "../outcome.ts";

/** Thrown inside a run to end it; caught where the run began. */
export class Halt extends Error {
  readonly stop: Stop;

  constructor(reason: Stop["reason"], message: string, at: At | undefined) {
    super(message);
    this.stop = { reason, message, at };
  }
}
