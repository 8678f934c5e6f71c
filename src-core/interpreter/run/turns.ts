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
  begins(moment: number, cycles: number): void {
    const changes = this.#changes;
    const happened = this.#clock.happened();
    if (happened !== this.#happened) {
      this.#happened = happened;
      changes.noteOther();
    }
    if (moment >= 0 && !this.#clock.runsEveryTurn && changes.areUndoneSince(moment)) this.#pace.skip(cycles);
    this.begun[0] = changes.moment;
    this.begun[1] = this.#pace.cycles;
  }
}
