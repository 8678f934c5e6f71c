/** Numbers that look random and are the same for the same seed: whatever is left to chance comes from here alone. */
export class Random {
  #state: number;

  /** Any whole number. */
  constructor(seed: number) {
    this.#state = seed >>> 0;
  }

  /** From 0 up to, but not including, 1. The mixing step of the splitmix family, in 32 bits; common practice, no source. */
  next(): number {
    this.#state = (this.#state + 0x9e3779b9) >>> 0;
    let mixed = this.#state;
    mixed = Math.imul(mixed ^ (mixed >>> 16), 0x21f0aaad);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
    return ((mixed ^ (mixed >>> 15)) >>> 0) / 2 ** 32;
  }

  /** A whole number from `least` to `most`, both included. */
  between(least: number, most: number): number {
    return least + Math.floor(this.next() * (most - least + 1));
  }
}
