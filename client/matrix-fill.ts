import type { CellVerdict, MatrixPlan } from "../server/language-server/client-messages/matrix.ts";
import type { EndOfMatrix, ToMatrix } from "./views/matrix/messages.ts";

/** All runs of a plan, until they are done or others take their place. */
export interface MatrixRuns {
  readonly plan: MatrixPlan;
  /** Has the cells run, each of which is handed on as it is done. */
  begin(take: (cell: CellVerdict) => void): BegunRuns;
}

export interface BegunRuns {
  /** Why there are no more. */
  readonly ended: Promise<EndOfMatrix>;
  /** Which sources were edited since they began; undefined where nobody knows. */
  edited(): Promise<readonly string[] | undefined>;
  cancel(): void;
}

/** Fills the page of one firmware's matrix. What the page was told is kept for the one that takes its place. */
export class MatrixFill {
  readonly #name: string;
  readonly #post: (message: ToMatrix) => void;
  #runs: MatrixRuns;
  /** None before the page is there, and once it is closed. */
  #begun: BegunRuns | undefined;
  #told: ToMatrix[] = [];

  constructor(name: string, runs: MatrixRuns, post: (message: ToMatrix) => void) {
    this.#name = name;
    this.#runs = runs;
    this.#post = post;
  }

  /** The page is there; once more where it was moved to another window, which loads it anew. */
  ready(): void {
    if (this.#begun === undefined) this.#begin();
    else for (const message of this.#told) this.#post(message);
  }

  /** Other runs take the place of those that are there. */
  replace(runs: MatrixRuns): void {
    this.#runs = runs;
    if (this.#begun !== undefined) this.#begin();
  }

  cancel(): void {
    this.#begun?.cancel();
  }

  /** Says which sources were edited since. */
  async followSources(): Promise<void> {
    const begun = this.#begun;
    const files = await begun?.edited();
    if (files !== undefined) this.#tell({ kind: "edited", files }, begun);
  }

  /** The page is closed. */
  close(): void {
    this.cancel();
    this.#begun = undefined;
  }

  #begin(): void {
    this.cancel();
    this.#told = [];
    const begun = this.#runs.begin((cell) => this.#tell({ kind: "cell", cell }, begun));
    this.#begun = begun;
    this.#tell({ kind: "plan", name: this.#name, plan: this.#runs.plan }, begun);
    void begun.ended.then((why) => this.#tell({ kind: "end", why }, begun));
  }

  /** What still comes of earlier runs is not these cells', and a closed page takes nothing. */
  #tell(message: ToMatrix, of: BegunRuns | undefined): void {
    if (of === undefined || this.#begun !== of) return;
    if (message.kind === "edited") this.#told = this.#told.filter(({ kind }) => kind !== "edited");
    this.#told.push(message);
    this.#post(message);
  }
}
