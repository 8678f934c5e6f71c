import {
  type CancellationToken,
  CancellationTokenSource,
  commands,
  type Disposable,
  type Uri,
  window,
} from "vscode";
import {
  type CellVerdict,
  type MatrixCellParams,
  type MatrixParams,
  type MatrixPlan,
  type MatrixPlanAnswer,
  type MatrixRunAnswer,
  type MatrixRunParams,
  matrixPlanRequest,
  matrixRunRequest,
  matrixSourcesRequest,
} from "../server/language-server/client-messages/matrix.ts";
import type { Firmware, RunSourcesAnswer } from "../server/language-server/client-messages/runs.ts";
import type { Checker } from "./checker.ts";
import { chooseFirmware } from "./choose-run.ts";
import type { MatrixRuns } from "./matrix-fill.ts";
import { MatrixPanel } from "./matrix-panel.ts";
import type { EndOfMatrix } from "./views/matrix/messages.ts";

/** Panels that show every mouse at every PC, one for each firmware. */
export class MatrixPanels implements Disposable {
  readonly #checker: Checker;
  readonly #extension: Uri;
  /** By the address of the firmware's project. */
  readonly #open = new Map<string, MatrixPanel>();
  /** Who takes cells, by the number that they carry. */
  readonly #takers = new Map<number, (cell: CellVerdict) => void>();
  readonly #following: Disposable;
  #last = 0;

  constructor(checker: Checker, extension: Uri) {
    this.#checker = checker;
    this.#extension = extension;
    this.#following = checker.onChecked(() => {
      for (const panel of this.#open.values()) void panel.followSources();
    });
    checker.onMatrixCell = ({ matrix, cell }: MatrixCellParams) => this.#takers.get(matrix)?.(cell);
  }

  async show(): Promise<void> {
    const firmware = await chooseFirmware(this.#checker, "Show the Matrix");
    if (firmware !== undefined) await this.#showOf(firmware);
  }

  dispose(): void {
    this.#following.dispose();
    for (const panel of this.#open.values()) panel.dispose();
  }

  /** Runs the matrix of a firmware as it is now, in the panel that shows it already where there is one. */
  async #showOf(firmware: Firmware): Promise<void> {
    const { project } = firmware;
    const answer = await this.#checker.request<MatrixPlanAnswer>(matrixPlanRequest, { project });
    if (answer === undefined) return;
    if (answer.kind !== "plan") {
      void window.showWarningMessage(`The firmware could not be run: ${answer.message}.`);
      return;
    }
    const runs = this.#runsOf(project, answer.plan);
    const open = this.#open.get(project);
    if (open === undefined) this.#openPanel(firmware, runs);
    else open.show(runs);
  }

  #openPanel(firmware: Firmware, runs: MatrixRuns): void {
    const { project, name } = firmware;
    const panel = new MatrixPanel(this.#extension, name, runs, (message) => {
      if (message.kind === "again") return void this.#showOf(firmware);
      const { stroke, mouse, pc } = message;
      void commands.executeCommand("edgewise.showRun", { project, stroke, mouse, pc });
    });
    this.#open.set(project, panel);
    panel.onClosed(() => this.#open.delete(project));
  }

  #runsOf(project: string, plan: MatrixPlan): MatrixRuns {
    return {
      plan,
      begin: (take) => {
        const cancellation = new CancellationTokenSource();
        return {
          ended: this.#run(project, take, cancellation.token),
          edited: () => this.#editedOf(project),
          cancel: () => cancellation.cancel(),
        };
      },
    };
  }

  async #editedOf(project: string): Promise<readonly string[] | undefined> {
    const params: MatrixParams = { project };
    const answer = await this.#checker.ask<RunSourcesAnswer>(matrixSourcesRequest, params);
    return answer?.kind === "sources" ? answer.edited : undefined;
  }

  async #run(
    project: string,
    take: (cell: CellVerdict) => void,
    cancelled: CancellationToken,
  ): Promise<EndOfMatrix> {
    const matrix = ++this.#last;
    this.#takers.set(matrix, take);
    try {
      const params: MatrixRunParams = { project, matrix };
      const answer = await this.#checker.ask<MatrixRunAnswer>(matrixRunRequest, params, cancelled);
      if (cancelled.isCancellationRequested) return { kind: "cancelled" };
      return answer ?? { kind: "lost" };
    } finally {
      this.#takers.delete(matrix);
    }
  }
}
