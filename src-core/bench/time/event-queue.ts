import { never, type Time } from "./time.ts";

/** Something that is going to happen. */
export interface Event {
  readonly time: Time;
  cancelled: boolean;
}

interface Entry extends Event {
  readonly order: number;
  readonly happen: () => void;
}

/**
 * What happens next on the bench. Events of one moment happen in the order in which they were asked for, so that a run
 * is the same every time.
 */
export class EventQueue {
  #now: Time = 0;
  #asked = 0;
  readonly #heap: Entry[] = [];

  get now(): Time {
    return this.#now;
  }

  /** When something happens next; `never` where nothing does. */
  get next(): Time {
    return this.#first()?.time ?? never;
  }

  /** `time` must not be before now. */
  at(time: Time, happen: () => void): Event {
    if (time < this.#now) throw new Error(`an event at ${time} ps, which is before now (${this.#now} ps)`);
    this.#asked += 1;
    const entry: Entry = { time, order: this.#asked, happen, cancelled: false };
    this.#up(entry);
    return entry;
  }

  after(delay: Time, happen: () => void): Event {
    return this.at(this.#now + delay, happen);
  }

  /** Lets everything happen up to a moment, which then is now. */
  advanceTo(time: Time): void {
    for (;;) {
      const first = this.#first();
      if (first === undefined || first.time > time) break;
      this.#take();
      this.#now = first.time;
      first.happen();
    }
    if (time > this.#now) this.#now = time;
  }

  #first(): Entry | undefined {
    while (this.#heap[0]?.cancelled === true) this.#take();
    return this.#heap[0];
  }

  #take(): void {
    const last = this.#heap.pop();
    if (last === undefined || this.#heap.length === 0) return;
    this.#down(last);
  }

  /** Moves later ones down from the end until the entry has its place. */
  #up(entry: Entry): void {
    const heap = this.#heap;
    let at = heap.length;
    while (at > 0) {
      const parentAt = (at - 1) >> 1;
      const parent = heap[parentAt];
      if (parent === undefined || !isBefore(entry, parent)) break;
      heap[at] = parent;
      at = parentAt;
    }
    heap[at] = entry;
  }

  /** Moves earlier ones up to the front until the entry has its place. */
  #down(entry: Entry): void {
    const heap = this.#heap;
    let at = 0;
    for (;;) {
      let childAt = 2 * at + 1;
      let child = heap[childAt];
      if (child === undefined) break;
      const right = heap[childAt + 1];
      if (right !== undefined && isBefore(right, child)) {
        childAt += 1;
        child = right;
      }
      if (!isBefore(child, entry)) break;
      heap[at] = child;
      at = childAt;
    }
    heap[at] = entry;
  }
}

function isBefore(one: Entry, other: Entry): boolean {
  return one.time < other.time || (one.time === other.time && one.order < other.order);
}
