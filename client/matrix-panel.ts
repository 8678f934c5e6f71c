import { type Disposable, type Uri, ViewColumn, type WebviewPanel, window } from "vscode";
import { MatrixFill, type MatrixRuns } from "./matrix-fill.ts";
import { viewFolder, viewPage } from "./view-page.ts";
import type { FromMatrix } from "./views/matrix/messages.ts";

/** A panel that shows every mouse at every PC for one firmware. */
export class MatrixPanel implements Disposable {
  readonly #panel: WebviewPanel;
  readonly #fill: MatrixFill;

  /** `answer` hears what the page asks for beyond its own runs. */
  constructor(
    extension: Uri,
    name: string,
    runs: MatrixRuns,
    answer: (message: Extract<FromMatrix, { kind: "again" | "show" }>) => void,
  ) {
    this.#panel = window.createWebviewPanel("edgewise.matrix", `Matrix: ${name}`, ViewColumn.Active, {
      enableScripts: true,
      localResourceRoots: [viewFolder(extension)],
      // What was run stays to be seen.
      retainContextWhenHidden: true,
    });
    this.#fill = new MatrixFill(name, runs, (message) => void this.#panel.webview.postMessage(message));
    this.#panel.onDidDispose(() => this.#fill.close());
    this.#panel.webview.onDidReceiveMessage((message: FromMatrix) => {
      switch (message.kind) {
        case "ready":
          this.#fill.ready();
          break;
        case "cancel":
          this.#fill.cancel();
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
    this.#panel.reveal();
    this.#fill.replace(runs);
  }

  /** Says which sources were edited since the runs. */
  async followSources(): Promise<void> {
    await this.#fill.followSources();
  }

  dispose(): void {
    this.#panel.dispose();
  }
}
