import {
  type CancellationToken,
  CancellationTokenSource,
  type Disposable,
  type Uri,
  ViewColumn,
  type WebviewPanel,
  window,
} from "vscode";
import type { CellVerdict, MatrixPlan } from "../server/language-server/client-messages/matrix.ts";
import { viewFolder, viewPage } from "./view-page.ts";
import type { EndOfMatrix, FromMatrix, ToMatrix } from "./views/matrix/messages.ts";

/** All runs of a plan, until they are done or others take their place. */
export interface MatrixRuns {
  readonly plan: MatrixPlan;
  /** Has the cells run, each of which is handed on as it is done; gives why there are no more. */
  run(take: (cell: CellVerdict) => void, cancelled: CancellationToken): Promise<EndOfMatrix>;
}

/** A panel that shows every mouse at every PC for one firmware. */
export class MatrixPanel implements Disposable {
  readonly #name: string;
  readonly #panel: WebviewPanel;
  #runs: MatrixRuns;
  /** Ends the runs that fill the cells; none before the page is there and once it is closed. */
  #cancellation: CancellationTokenSource | undefined;
  #isReady = false;

  /** `answer` hears what the page asks for beyond its own runs. */
  constructor(
    extension: Uri,
    name: string,
    runs: MatrixRuns,
    answer: (message: Extract<FromMatrix, { kind: "again" | "show" }>) => void,
  ) {
    this.#name = name;
    this.#runs = runs;
    this.#panel = window.createWebviewPanel("edgewise.matrix", `Matrix: ${name}`, ViewColumn.Active, {
      enableScripts: true,
      localResourceRoots: [viewFolder(extension)],
      // What was run stays to be seen.
      retainContextWhenHidden: true,
    });
    this.#panel.onDidDispose(() => {
      this.#cancellation?.cancel();
      this.#cancellation = undefined;
    });
    this.#panel.webview.onDidReceiveMessage((message: FromMatrix) => {
      switch (message.kind) {
        case "ready":
          this.#isReady = true;
          void this.#begin();
          break;
        case "cancel":
          this.#cancellation?.cancel();
          break;
        default:
          answer(message);
      }
    });
    this.#panel.webview.html = viewPage(this.#panel.webview, extension, "matrix", "Matrix");
  }

  /** Called once, when the panel is closed. */
  onClosed(closed: () => void): void {
    this.#panel.onDidDispose(closed);
  }

  /** Comes to the front with other runs. */
  show(runs: MatrixRuns): void {
    this.#runs = runs;
    this.#panel.reveal();
    if (this.#isReady) void this.#begin();
  }

  dispose(): void {
    this.#panel.dispose();
  }

  async #begin(): Promise<void> {
    this.#cancellation?.cancel();
    const cancellation = new CancellationTokenSource();
    this.#cancellation = cancellation;
    // What still comes of earlier runs is not these cells', and a closed page takes nothing.
    const post = (message: ToMatrix): void => {
      if (this.#cancellation === cancellation) void this.#panel.webview.postMessage(message);
    };
    const runs = this.#runs;
    post({ kind: "plan", name: this.#name, plan: runs.plan });
    const why = await runs.run((cell) => post({ kind: "cell", cell }), cancellation.token);
    post({ kind: "end", why });
  }
}
