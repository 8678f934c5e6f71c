import type { BenchSide } from "../engine.ts";
import { never, type Time } from "../time/time.ts";
import type { Chip } from "./chip.ts";

/**
 * Brings the chip's own events, counted in cycles, and those of the bench into one order. An engine asks after each
 * step whether the code has come to `due`, and calls `catchUp` if so; one whose steps take many cycles calls it before
 * each access to a register as well.
 */
export class Timeline {
  readonly #chip: Chip;
  readonly #bench: BenchSide;
  #benchTime: Time = never;
  /** Cycle at which something happens on the bench, or 0 where it has to be asked anew. */
  benchDue = 0;

  constructor(chip: Chip, bench: BenchSide) {
    this.#chip = chip;
    this.#bench = bench;
    chip.core.moveBench = (time) => {
      bench.advanceTo(time);
      // Whoever sees the edge may ask for something that happens soon.
      this.benchDue = 0;
    };
  }

  /** Cycle at which something happens in the chip or on the bench, or 0 where that has to be asked anew. */
  get due(): number {
    return Math.min(this.#chip.core.events.next, this.benchDue);
  }

  /** Lets everything happen that happens until the cycle where the code is. */
  catchUp(): void {
    const { core, cpu } = this.#chip;
    this.#askBench();
    while (this.due <= cpu.cycles && !this.#bench.ended) {
      const cycle = core.events.next;
      if (cycle <= this.benchDue && core.clock.timeOf(cycle) <= this.#benchTime) {
        this.#bench.advanceTo(core.clock.timeOf(cycle));
        core.runNextEvent();
      } else this.#bench.advanceTo(this.#benchTime);
      this.#askBench();
    }
  }

  /** The code does nothing until something happens: its cycles go on to then. False where nothing ever happens. */
  skipToNext(): boolean {
    const { cpu } = this.#chip;
    this.#askBench();
    if (this.due === Number.POSITIVE_INFINITY) return false;
    cpu.cycles = Math.max(cpu.cycles, this.due);
    this.catchUp();
    return true;
  }

  #askBench(): void {
    const { next } = this.#bench;
    if (next === this.#benchTime && this.benchDue !== 0) return;
    this.#benchTime = next;
    this.benchDue = this.#chip.core.clock.cycleAt(next);
  }
}
