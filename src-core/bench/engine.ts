import type { At } from "../reader/typed/nodes.ts";
import type { Time } from "./time/time.ts";
import type { Wires } from "./wires/wires.ts";

/**
 * Runs a firmware on the bench: the interpreter over its sources, or a compiled image on a simulated chip. The engine
 * is what moves time on: while its code runs it asks `next` when something happens on the bench, and calls `advanceTo`
 * with its own time before it looks at a pin, before it changes one, and when that moment has come.
 */
export interface Engine {
  /** Runs from reset until `bench.ended` or until the code can go no further; may be called once. */
  run(bench: BenchSide): EngineEnd;
}

/** What an engine sees of the bench. */
export interface BenchSide {
  readonly wires: Wires;
  /** When something happens next, the end of the run included. */
  readonly next: Time;
  /** The run is over: the engine returns. */
  readonly ended: boolean;
  /** Lets everything happen up to a moment. Pins of the chip change while it does. */
  advanceTo(time: Time): void;
}

/** How a run of the code ended. */
export type EngineEnd =
  /** The bench ended it. */
  | { readonly kind: "ended" }
  /** `main` returned, interrupts were off or never came, or the like: the code does nothing more. */
  | { readonly kind: "stopped"; readonly message: string; readonly at: At | undefined };
