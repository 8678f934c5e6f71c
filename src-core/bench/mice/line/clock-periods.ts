import type { Time } from "../../time/time.ts";

/** Measures the falling edges of a byte's clock. */
export class PeriodMeter {
  clocks = 0;
  leastPeriod: Time = 0;
  mostPeriod: Time = 0;
  #last: Time = 0;

  restart(): void {
    this.clocks = 0;
    this.leastPeriod = 0;
    this.mostPeriod = 0;
  }

  fell(now: Time): void {
    this.clocks += 1;
    if (this.clocks > 1) {
      const period = now - this.#last;
      if (this.clocks === 2 || period < this.leastPeriod) this.leastPeriod = period;
      if (period > this.mostPeriod) this.mostPeriod = period;
    }
    this.#last = now;
  }
}
