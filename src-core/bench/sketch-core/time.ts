import type { AvrChip } from "../../model/chips/chip.ts";
import { registerNamed } from "../../model/chips/find-bits.ts";
import type { HandlerBody } from "../engines/interpreter-engine.ts";
import { HandlerAccess } from "./access.ts";
import type { CoreCall } from "./core-function.ts";
import { functionCycles, handlerCycles } from "./function-cycles.ts";
import { bitNamed } from "./registers.ts";

/** `wiring.c`: timer 0 counts each 64th cycle, and its handler is called every 256 counts. */
const prescaler = 64;
const countsPerOverflow = 256;

/** What the core knows of the time: the counters that the overflow handler of timer 0 keeps (`wiring.c`). */
export class CoreTime {
  /** `clockCyclesPerMicrosecond()` of `Arduino.h`: a whole number. */
  readonly cyclesPerMicrosecond: number;
  readonly #counter: number;
  readonly #overflow: { readonly address: number; readonly mask: number };
  #overflows = 0;
  #millis = 0;
  #fraction = 0;

  constructor(model: AvrChip, clockHz: number) {
    const counter = registerNamed(model.registers, "TCNT0");
    const overflow = bitNamed(model, "TOV0");
    if (counter === undefined || overflow === undefined)
      throw new Error(`${model.printedName} has no timer 0`);
    this.cyclesPerMicrosecond = Math.floor(clockHz / 1_000_000);
    this.#counter = counter.address;
    this.#overflow = overflow;
  }

  /** After a reset. */
  begin(): void {
    this.#overflows = 0;
    this.#millis = 0;
    this.#fraction = 0;
  }

  readonly overflowHandler: HandlerBody = ({ chip }) => {
    const access = new HandlerAccess(chip);
    access.wait(handlerCycles.timerOverflow.before);
    // MICROSECONDS_PER_TIMER0_OVERFLOW, MILLIS_INC, FRACT_INC and FRACT_MAX of `wiring.c`.
    const microseconds = Math.floor((prescaler * countsPerOverflow) / this.cyclesPerMicrosecond);
    this.#millis += Math.floor(microseconds / 1000);
    this.#fraction = (this.#fraction + ((microseconds % 1000) >> 3)) & 0xff;
    if (this.#fraction >= 1000 >> 3) {
      this.#fraction -= 1000 >> 3;
      this.#millis += 1;
    }
    this.#millis >>>= 0;
    this.#overflows = (this.#overflows + 1) >>> 0;
    access.wait(handlerCycles.timerOverflow.after);
    return undefined;
  };

  /** Milliseconds, 0 to 4,294,967,295, counted round. */
  millis({ access, surroundings }: CoreCall): number {
    access.wait(functionCycles.millis.before);
    surroundings.settle();
    const value = this.#millis;
    access.wait(functionCycles.millis.after);
    return value;
  }

  /** Microseconds, 0 to 4,294,967,295, counted round, in steps of 64 cycles. */
  micros({ access }: CoreCall): number {
    access.wait(functionCycles.micros.before);
    // Whatever is due comes before the first of the two looks.
    const count = access.read(this.#counter);
    const isPast = (access.read(this.#overflow.address) & this.#overflow.mask) !== 0;
    const overflows = this.#overflows + (isPast && count < 0xff ? 1 : 0);
    access.wait(functionCycles.micros.after);
    const each = Math.floor(prescaler / this.cyclesPerMicrosecond);
    return Math.imul((overflows << 8) + count, each) >>> 0;
  }
}
