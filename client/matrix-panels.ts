import {
  type CancellationToken,
  CancellationTokenSource,
  commands,
  type Disposable,
  type Uri,
  ViewColumn,
  type WebviewPanel,
  window,
} from "vscode";
import {
  type MatrixCellParams,
  type MatrixPlan,
  type MatrixPlanAnswer,
  type MatrixRunParams,
  matrixPlanRequest,
  matrixRunRequest,
} from "../server/language-server/client-messages/matrix.ts";
import type { Firmware } from "../server/language-server/client-messages/runs.ts";
import type { Checker } from "./checker.ts";
import { chooseFirmware } from "./choose-run.ts";
import { viewFolder, viewPage } from "./view-page.ts";
import type { EndOfMatrix, FromMatrix, ToMatrix } from "./views/matrix/messages.ts";

/** Panels that show every mouse at every PC. */
export class MatrixPanels implements Disposable {
  readonly #checker: Checker;
  readonly #extension: Uri;
  /** By the number that their cells carry. */
  readonly #open = new Map<number, WebviewPanel>();
  #last = 0;

  constructor(checker: Checker, extension: Uri) {
    this.#checker = checker;
    this.#extension = extension;
    checker.onMatrixCell = ({ matrix, cell }: MatrixCellParams) => this.#post(matrix, { kind: "cell", cell });
  }

  async show(): Promise<void> {
    const firmware = await chooseFirmware(this.#checker, "Show the Matrix");
    if (firmware === undefined) return;
    const { project } = firmware;
    const answer = await this.#checker.request<MatrixPlanAnswer>(matrixPlanRequest, { project });
    if (answer === undefined) return;
    if (answer.kind === "plan") this.#openPanel(firmware, answer.plan);
    else void window.showWarningMessage(`The firmware could not be run: ${answer.message}.`);
  }

  dispose(): void {
    for (const panel of this.#open.values()) panel.dispose();
  }

  #openPanel({ project, name }: Firmware, plan: MatrixPlan): void {
    const matrix = ++this.#last;
    const panel = window.createWebviewPanel("edgewise.matrix", `Matrix: ${name}`, ViewColumn.Active, {
      enableScripts: true,
      localResourceRoots: [viewFolder(this.#extension)],
      // What was run stays to be seen.
      retainContextWhenHidden: true,
    });
    this.#open.set(matrix, panel);
    const cancellation = new CancellationTokenSource();
    panel.onDidDispose(() => {
      this.#open.delete(matrix);
      cancellation.cancel();
    });
    panel.webview.onDidReceiveMessage(async (message: FromMatrix) => {
      switch (message.kind) {
        case "ready":
          this.#post(matrix, { kind: "plan", name, plan });
          this.#post(matrix, { kind: "end", why: await this.#run(project, matrix, cancellation.token) });
          break;
        case "cancel":
          cancellation.cancel();
          break;
        case "show": {
          const { stroke, mouse, pc } = message;
          await commands.executeCommand("edgewise.showRun", { project, stroke, mouse, pc });
        }
      }
    });
    panel.webview.html = viewPage(panel.webview, this.#extension, "matrix", "Matrix");
  }

  /** Has all cells run; gives why there are no more. */
  async #run(project: string, matrix: number, cancelled: CancellationToken): Promise<EndOfMatrix> {
    const params: MatrixRunParams = { project, matrix };
    const answer = await this.#checker.ask<object>(matrixRunRequest, params, cancelled);
    if (cancelled.isCancellationRequested) return "cancelled";
    return answer === undefined ? "lost" : "done";
  }

  #post(matrix: number, message: ToMatrix): void {
    void this.#open.get(matrix)?.webview.postMessage(message);
  }
}
