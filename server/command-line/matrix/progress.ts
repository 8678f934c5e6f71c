import type { CellResult } from "../../../src-core/matrix-result.ts";
import { firstTrouble } from "../../../src-core/matrix-verdict.ts";

/** Back to the line's begin, and erase in line (ECMA-48, 8.3.15 and 8.3.41). */
const anew = "\r\u001b[K";

/** A line on a terminal that says how far a matrix is, written over as it goes on. */
export class Progress {
  readonly #total: number;
  readonly #write: (text: string) => void;
  #done = 0;
  #notPassed = 0;

  /** `write` gets the control sequences too. */
  constructor(total: number, write: (text: string) => void) {
    this.#total = total;
    this.#write = write;
    this.#show();
  }

  get done(): number {
    return this.#done;
  }

  count(cell: CellResult): void {
    this.#done += 1;
    if (firstTrouble(cell) !== undefined) this.#notPassed += 1;
    this.#show();
  }

  /** Takes the line away. */
  clear(): void {
    this.#write(anew);
  }

  #show(): void {
    const bad = this.#notPassed === 0 ? "" : `, ${this.#notPassed} not passed`;
    this.#write(`${anew}${this.#done} of ${this.#total} cells${bad}`);
  }
}
