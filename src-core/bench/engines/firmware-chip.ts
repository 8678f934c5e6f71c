import type { At } from "../../reader/typed/nodes.ts";
import type { Look } from "../observing/pulse.ts";

/** The chip as an engine without an instruction core sees it: registers, cycles, events, interrupts. */
export interface FirmwareChip {
  /** Cycles since power-up. */
  readonly cycles: number;
  /** The cycle at which something happens in the chip or on the bench; infinite for none, 0 where `catchUp` has to ask. */
  readonly due: number;
  /** What the code is doing, for the edges that it makes. */
  place: At | undefined;
  /** Lets cycles go by; what is due then happens with `catchUp`. */
  pass(cycles: number): void;
  /** Lets everything happen up to now, of the chip and of the bench, in the order in which it happens. */
  catchUp(): void;
  /** `look` tells what the code looks at; undefined where nobody knows. */
  read(address: number, look: Look | undefined): number;
  write(address: number, value: number): void;
  /** The name of the vector (`INT0_vect`) of an interrupt that may run now; undefined for none. */
  pendingInterrupt(): string | undefined;
  /** Takes it: its flag is cleared, and interrupts are off. */
  enterInterrupt(vector: string): void;
  /** Interrupts are on again. */
  leaveInterrupt(): void;
  /** The watchdog has reset the chip: the code starts again, with what it left in memory. */
  readonly wasReset: boolean;
  /** The instruction WDR. */
  restartWatchdog(): void;
  /** The instruction SLEEP: cycles go by until something happens that may wake the chip. Says why nothing ever can. */
  sleep(): { readonly message: string } | undefined;
  /** See `ChipCore`. Writes of SREG are not counted; whoever asks looks at `status`. */
  readonly happenings: number;
  /** SREG. */
  readonly status: number;
}
