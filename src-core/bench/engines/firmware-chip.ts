import type { At } from "../../reader/typed/nodes.ts";

/** The chip as an engine without an instruction core sees it: registers, cycles, events, interrupts. */
export interface FirmwareChip {
  readonly hz: number;
  /** Cycles since power-up. */
  readonly cycles: number;
  /** The cycle of the next event of a timer, a USART or the like; infinite for none. */
  readonly nextEvent: number;
  /** What the code is doing, for the edges that it makes. */
  place: At | undefined;
  /** Lets cycles go by; events that were due are made to happen one by one with `happen`. */
  pass(cycles: number): void;
  happen(): void;
  read(address: number): number;
  write(address: number, value: number): void;
  /** The name of the vector (`INT0_vect`) of an interrupt that may run now; undefined for none. */
  pendingInterrupt(): string | undefined;
  /** Takes it: its flag is cleared, and interrupts are off. */
  enterInterrupt(vector: string): void;
  /** Interrupts are on again. */
  leaveInterrupt(): void;
  /** Whether something was read since the last call that changes by itself, such as a counter. */
  takeRestless(): boolean;
}
