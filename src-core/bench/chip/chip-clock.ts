import { second, type Time } from "../time/time.ts";

/** Moments of the chip's cycles, while the chip may divide its clock as it runs. */
export class ChipClock {
  readonly #oscillatorHz: number;
  #divider = 1;
  #sinceCycle = 0;
  #sinceTime: Time = 0;

  constructor(oscillatorHz: number) {
    this.#oscillatorHz = oscillatorHz;
  }

  get hz(): number {
    return this.#oscillatorHz / this.#divider;
  }

  /** From this cycle on the oscillator is divided. */
  divide(divider: number, cycle: number): void {
    this.#sinceTime = this.timeOf(cycle);
    this.#sinceCycle = cycle;
    this.#divider = divider;
  }

  timeOf(cycle: number): Time {
    return this.#sinceTime + Math.round(((cycle - this.#sinceCycle) / this.hz) * second);
  }

  /** The first cycle that is not before a moment; infinite for never. */
  cycleAt(time: Time): number {
    if (time === Number.POSITIVE_INFINITY) return time;
    const near = this.#sinceCycle + Math.floor(((time - this.#sinceTime) / second) * this.hz);
    for (let cycle = near - 1; ; cycle += 1) if (this.timeOf(cycle) >= time) return cycle;
  }
}
