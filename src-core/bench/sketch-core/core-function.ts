import type { Surroundings } from "../../interpreter/outcome.ts";
import type { HandlerBody } from "../engines/interpreter-engine.ts";
import type { Access } from "./access.ts";

/** One call of a function of the sketch core. */
export interface CoreCall {
  readonly access: Access;
  /** Integers and pointers; the object comes first in methods. */
  readonly parameters: readonly number[];
  readonly surroundings: Surroundings;
}

export type CoreFunction = (call: CoreCall) => number | undefined;

/** Functions by their names. */
export type CoreFunctions = Readonly<Record<string, CoreFunction>>;

/** Handlers by the usual names of their vectors. */
export type CoreHandlers = Map<string, HandlerBody>;
