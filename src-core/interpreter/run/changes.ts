/** Changes that are remembered; a power of two. A turn of a waiting loop makes a few at most. */
const remembered = 64;

/**
 * What bytes of memory held before the code changed them, the last changes only: enough to tell whether memory holds again
 * what it held a short while ago.
 */
export class Changes {
  readonly #addresses = new Int32Array(remembered);
  readonly #before = new Uint8Array(remembered);
  /** By address: the question in which the byte was looked at last. */
  readonly #lookedAt: Uint32Array;
  readonly #bytes: Uint8Array;
  #questions = 0;
  #moment = 0;

  constructor(bytes: Uint8Array) {
    this.#bytes = bytes;
    this.#lookedAt = new Uint32Array(bytes.length);
  }

  /** Grows with every change. */
  get moment(): number {
    return this.#moment;
  }

  /** The byte at an address is about to become another, or just has; `before` is what it was. */
  note(address: number, before: number): void {
    const slot = this.#moment & (remembered - 1);
    this.#addresses[slot] = address;
    this.#before[slot] = before;
    this.#moment += 1;
  }

  /** Something else than a byte of memory has changed: nothing is as it was before. */
  noteOther(): void {
    this.#moment += remembered + 1;
  }

  /** Whether everything is again as it was at an earlier moment; false where that is too many changes ago to tell. */
  areUndoneSince(moment: number): boolean {
    if (this.#moment - moment > remembered) return false;
    this.#questions += 1;
    for (let each = moment; each < this.#moment; each += 1) {
      const slot = each & (remembered - 1);
      const address = this.#addresses[slot] ?? 0;
      // The first change of a byte tells what it was then.
      if (this.#lookedAt[address] === this.#questions) continue;
      this.#lookedAt[address] = this.#questions;
      if (this.#bytes[address] !== this.#before[slot]) return false;
    }
    return true;
  }
}
