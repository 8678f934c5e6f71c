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
    this.#heap.push(entry);
    this.#up(this.#heap.length - 1);
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
    this.#heap[0] = last;
    this.#down(0);
  }

  #up(index: number): void {
    let at = index;
    while (at > 0) {
      const parent = (at - 1) >> 1;
      if (!this.#isBefore(at, parent)) break;
      this.#swap(at, parent);
      at = parent;
    }
  }

  #down(index: number): void {
    let at = index;
    for (;;) {
      const left = 2 * at + 1;
      let least = at;
      if (this.#isBefore(left, least)) least = left;
      if (this.#isBefore(left + 1, least)) least = left + 1;
      if (least === at) return;
      this.#swap(at, least);
      at = least;
    }
  }

  #isBefore(a: number, b: number): boolean {
    const one = this.#heap[a];
    const other = this.#heap[b];
    if (one === undefined || other === undefined) return false;
    return one.time < other.time || (one.time === other.time && one.order < other.order);
  }

  #swap(a: number, b: number): void {
    const one = this.#heap[a];
    const other = this.#heap[b];
    if (one === undefined || other === undefined) return;
    this.#heap[a] = other;
    this.#heap[b] = one;
  }
}
