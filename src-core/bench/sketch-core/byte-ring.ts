/** The core's buffers: one byte less than their size fits in. */
export class ByteRing {
  readonly #bytes: Uint8Array;
  #head = 0;
  #tail = 0;

  constructor(size: number) {
    this.#bytes = new Uint8Array(size);
  }

  get isEmpty(): boolean {
    return this.#head === this.#tail;
  }

  get isFull(): boolean {
    return this.#following(this.#head) === this.#tail;
  }

  get length(): number {
    return (this.#bytes.length + this.#head - this.#tail) % this.#bytes.length;
  }

  get room(): number {
    return this.#bytes.length - 1 - this.length;
  }

  /** The oldest byte; undefined for none. */
  get first(): number | undefined {
    return this.isEmpty ? undefined : this.#bytes[this.#tail];
  }

  put(byte: number): void {
    this.#bytes[this.#head] = byte;
    this.#head = this.#following(this.#head);
  }

  take(): number | undefined {
    const byte = this.first;
    if (byte !== undefined) this.#tail = this.#following(this.#tail);
    return byte;
  }

  clear(): void {
    this.#head = this.#tail;
  }

  #following(index: number): number {
    return (index + 1) % this.#bytes.length;
  }
}
