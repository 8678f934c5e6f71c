/** The last pages, by their addresses: a page that was shown may be asked for again long after its document was closed. */
export class KeptPages {
  readonly #most: number;
  /** The one shown last is the last. */
  readonly #pages = new Map<string, string>();

  constructor(most: number) {
    this.#most = most;
  }

  keep(address: string, page: string): void {
    this.#pages.delete(address);
    this.#pages.set(address, page);
    const [oldest] = this.#pages.keys();
    if (oldest !== undefined && this.#pages.size > this.#most) this.#pages.delete(oldest);
  }

  /** Undefined for one that is not kept any more. */
  at(address: string): string | undefined {
    return this.#pages.get(address);
  }
}
