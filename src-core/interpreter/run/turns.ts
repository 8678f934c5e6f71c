import type { Clock } from "../outcome.ts";
import type { Changes } from "./changes.ts";
import type { Pace } from "./pace.ts";

/**
 * Skips turns of loops that wait. A turn behind which everything is as it was before it, and in which nothing happened,
 * is followed by turns that do the very same until something happens: as many as fit in whole are skipped. Whatever the
 * loop does, calls, writes that write what was there, flags that are set and cleared again, makes no difference.
 */
export class Turns {
  /** Of the turn that began last: the moment of `Changes`, and cycles. Generated code keeps both for each loop. */
  readonly begun = new Float64Array(2);
  readonly #clock: Clock;
  readonly #changes: Changes;
  readonly #pace: Pace;
  #happened = 0;

  constructor(clock: Clock, changes: Changes, pace: Pace) {
    this.#clock = clock;
    this.#changes = changes;
    this.#pace = pace;
  }

  /**
   * A turn begins. The one before it began at this moment, -1 for none or for one that changed something, and with so many
   * cycles gone by.
   */
  begins(moment: number, cycles: number, most = Number.POSITIVE_INFINITY): number {
    const changes = this.#changes;
    const happened = this.#clock.happened();
    if (happened !== this.#happened) {
      this.#happened = happened;
      changes.noteOther();
    }
    const isWaiting = moment >= 0 && !this.#clock.runsEveryTurn && changes.areUndoneSince(moment);
    const skipped = isWaiting ? this.#pace.skip(cycles, most) : 0;
    this.begun[0] = changes.moment;
    this.begun[1] = this.#pace.cycles;
    return skipped;
  }

  /**
   * The same for a loop that counts a variable up or down by one: it is `count` now and was `before` at the turn before. Turns are
   * the same while it stays away from `limit`, with which the loop compares it, and from the ends of its type, `least` and
   * `most`. What it is behind the turns that are skipped comes back.
   */
  beginsCounted(
    moment: number,
    cycles: number,
    count: number,
    before: number,
    least: number,
    most: number,
    limit: number,
  ): number {
    const step = count - before;
    if (step === 0) this.begins(moment, cycles);
    else if (step === 1 || step === -1) {
      // The turn before and those to come may look before or behind the step.
      const near = Math.min(Math.abs(limit - count), step > 0 ? most - count : count - least);
      const turns = this.begins(moment, cycles, near - 2);
      if (turns > 0) return count + step * turns;
    } else this.begins(-1, cycles);
    return count;
  }
}
