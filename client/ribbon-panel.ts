import { type Disposable, Uri, ViewColumn, type WebviewPanel, window, workspace } from "vscode";
import { type HeldRun, whyNot } from "./held-run.ts";
import { openPlace } from "./open-place.ts";
import { viewFolder, viewPage } from "./view-page.ts";
import type { FromRibbon, ToRibbon } from "./views/ribbon/messages.ts";

type Saving = Extract<FromRibbon, { kind: "save" }>;

/** A panel that shows a run, which is closed with it. */
export class RibbonPanel implements Disposable {
  readonly #panel: WebviewPanel;
  readonly #run: HeldRun;

  constructor(extension: Uri, title: string, run: HeldRun) {
    this.#run = run;
    this.#panel = window.createWebviewPanel("edgewise.ribbon", title, ViewColumn.Active, {
      enableScripts: true,
      localResourceRoots: [viewFolder(extension)],
      // The run is laid out anew for each window; to begin again at each change of tabs would lose the place.
      retainContextWhenHidden: true,
    });
    this.#panel.onDidDispose(() => this.#run.close());
    this.#panel.webview.onDidReceiveMessage((message: FromRibbon) => this.#answer(message));
    this.#panel.webview.html = viewPage(this.#panel.webview, extension, "ribbon", "Run");
  }

  /** Called once, when the panel is closed. */
  onClosed(closed: () => void): void {
    this.#panel.onDidDispose(closed);
  }

  dispose(): void {
    this.#panel.dispose();
  }

  async #answer(message: FromRibbon): Promise<void> {
    const run = this.#run;
    switch (message.kind) {
      case "ready":
        return this.#post({ kind: "run", overview: run.overview });
      case "panel": {
        const { from, to, columns } = message;
        const answer = await run.panel({ from, to, columns });
        return this.#post(
          answer?.kind === "panel"
            ? { kind: "panel", panel: answer.panel, columns }
            : { kind: "cannot", words: whyNot(answer) },
        );
      }
      case "open":
        return openPlace(run.root, message.place, this.#panel.viewColumn);
      case "save":
        return this.#save(message, run);
    }
  }

  /** Asks where to, and writes only there. */
  async #save({ format, window: part }: Saving, run: HeldRun): Promise<void> {
    const target = await window.showSaveDialog({
      title: format === "svg" ? "Save the Picture" : "Save the Waveforms",
      defaultUri: Uri.joinPath(Uri.parse(run.root), `run.${format}`),
      filters: format === "svg" ? { "SVG picture": ["svg"] } : { "Value change dump": ["vcd"] },
    });
    if (target === undefined) return;
    const answer = await run.text({ format, window: part });
    if (answer?.kind !== "text") return this.#post({ kind: "cannot", words: whyNot(answer) });
    try {
      await workspace.fs.writeFile(target, new TextEncoder().encode(answer.text));
    } catch (error) {
      void window.showErrorMessage(`${target.fsPath} could not be written: ${String(error)}`);
    }
  }

  #post(message: ToRibbon): void {
    void this.#panel.webview.postMessage(message);
  }
}
