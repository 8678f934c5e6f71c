/** As many unexpected ends as this within `period` are too many to go on. */
const tooMany = 5;
/** Three minutes, in milliseconds. */
const period = 3 * 60 * 1000;

/** How often the server ended without being asked to. */
export class ServerEnds {
  #times: readonly number[] = [];

  /** It ended at `now`, in milliseconds; whether it is to be started again. */
  happened(now: number): boolean {
    this.#times = [...this.#times.filter((time) => now - time < period), now];
    return this.#times.length < tooMany;
  }

  /** How often it did lately. */
  get count(): number {
    return this.#times.length;
  }

  /** It is as if it had never happened, as somebody wants it started anew. */
  forget(): void {
    this.#times = [];
  }
}
