import { setFlagsFromString } from "node:v8";

/**
 * For a process that checks again and again. What a check makes lives until the next one, longer than most objects
 * and yet not long. The engine (V8) would come to put such results among the old objects at once, where they lie, with
 * all they refer to, until a major collection: each minor one then copies them, and a third of a re-check goes there.
 * To be called before the first check; an engine that does not know the flag says so and goes on.
 */
export function keepResultsYoung(): void {
  setFlagsFromString("--no-allocation-site-pretenuring");
}
