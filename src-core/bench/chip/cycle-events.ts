import type { At } from "../../reader/typed/nodes.ts";

/** Something that a part of the chip does at a cycle of its own. */
export interface CycleTask {
  /** Cycles since power-up; infinite where it is not going to happen. */
  cycle: number;
  /** The place in the source that brought it about. */
  place: At | undefined;
  readonly happen: () => void;
}

/**
 * What the parts of a chip do next, by their clock. Each part keeps one task and moves it; there are about a dozen, so
 * that looking at all of them is faster than keeping them in order.
 */
export class CycleEvents {
  /** The cycle of what happens next; infinite where nothing does. */
  next = Number.POSITIVE_INFINITY;
  readonly #tasks: CycleTask[] = [];

  /** Tasks of one cycle happen in the order in which they were made. */
  task(happen: () => void): CycleTask {
    const task = { cycle: Number.POSITIVE_INFINITY, place: undefined, happen };
    this.#tasks.push(task);
    return task;
  }

  at(task: CycleTask, cycle: number): void {
    const earlier = task.cycle;
    task.cycle = cycle;
    if (cycle < this.next) this.next = cycle;
    else if (earlier === this.next) this.#findNext();
  }

  cancel(task: CycleTask): void {
    this.at(task, Number.POSITIVE_INFINITY);
  }

  /** Takes what happens next out; its `happen` is the caller's to call. */
  takeNext(): CycleTask | undefined {
    const task = this.#tasks.find(({ cycle }) => cycle === this.next);
    if (task === undefined || this.next === Number.POSITIVE_INFINITY) return undefined;
    this.cancel(task);
    return task;
  }

  #findNext(): void {
    let next = Number.POSITIVE_INFINITY;
    for (const { cycle } of this.#tasks) if (cycle < next) next = cycle;
    this.next = next;
  }
}
