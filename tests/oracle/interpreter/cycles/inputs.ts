/**
 * What the code finds at registers that change by themselves, by how often it looked: the same for both ways to run
 * it, however long they take between two looks.
 */
export class Inputs {
  #looks = 0;

  /** PIND, PINB and UCSR0A of the ATmega1284P (data sheet, register summary). */
  static readonly addresses: readonly number[] = [0x29, 0x23, 0xc0];

  get looks(): number {
    return this.#looks;
  }

  /** Bits that change after some looks each, so that every waiting loop makes turns and ends. */
  look(): number {
    this.#looks += 1;
    const bit = (period: number): number => Math.floor(this.#looks / period) % 2;
    return (bit(3) << 2) | (bit(7) << 3) | (bit(2) << 5) | bit(5);
  }
}
