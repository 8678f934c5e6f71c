import { type Disposable, Uri, ViewColumn, type WebviewPanel, window, workspace } from "vscode";
import type { Place } from "../server/language-server/client-messages/runs.ts";
import { type HeldRun, whyNot } from "./held-run.ts";
import { jumpInWords } from "./jump-words.ts";
import { openPlace } from "./open-place.ts";
import { viewFolder, viewPage } from "./view-page.ts";
import type { FromRibbon, ToRibbon } from "./views/ribbon/messages.ts";

type Saving = Extract<FromRibbon, { kind: "save" }>;

/** A panel that shows a run, which is closed with it or as another takes its place. */
export class RibbonPanel implements Disposable {
  readonly #panel: WebviewPanel;
  /** Undefined where there is none, of which the user was told. */
  readonly #runAgain: () => Promise<HeldRun | undefined>;
  #run: HeldRun;
  #isRunning = false;
  #isClosed = false;

  constructor(extension: Uri, title: string, run: HeldRun, runAgain: () => Promise<HeldRun | undefined>) {
    this.#run = run;
    this.#runAgain = runAgain;
    this.#panel = window.createWebviewPanel("edgewise.ribbon", title, ViewColumn.Active, {
      enableScripts: true,
      localResourceRoots: [viewFolder(extension)],
      // The run is laid out anew for each window; to begin again at each change of tabs would lose the place.
      retainContextWhenHidden: true,
    });
    this.#panel.onDidDispose(() => {
      this.#isClosed = true;
      this.#run.close();
    });
    this.#panel.webview.onDidReceiveMessage((message: FromRibbon) => this.#answer(message));
    this.#panel.webview.html = viewPage(this.#panel.webview, extension, "ribbon", "Run");
  }

  /** Called once, when the panel is closed. */
  onClosed(closed: () => void): void {
    this.#panel.onDidDispose(closed);
  }

  /** Says which sources were edited since the run. */
  async followSources(): Promise<void> {
    const run = this.#run;
    const answer = await run.sources();
    if (answer?.kind === "sources") this.#post({ kind: "edited", files: answer.edited }, run);
  }

  dispose(): void {
    this.#panel.dispose();
  }

  async #answer(message: FromRibbon): Promise<void> {
    const run = this.#run;
    switch (message.kind) {
      case "ready":
        return this.#show();
      case "panel": {
        const { from, to, columns } = message;
        const answer = await run.panel({ from, to, columns });
        return this.#post(
          answer?.kind === "panel"
            ? { kind: "panel", panel: answer.panel, columns }
            : { kind: "cannot", words: whyNot(answer) },
          run,
        );
      }
      case "open":
        return this.#open(message.place, run);
      case "again":
        return this.#again();
      case "save":
        return this.#save(message);
    }
  }

  async #show(): Promise<void> {
    this.#post({ kind: "run", overview: this.#run.overview }, this.#run);
    await this.followSources();
  }

  async #open(place: Place, run: HeldRun): Promise<void> {
    const now = await run.place(place);
    await openPlace(run.root, now?.kind === "place" ? now.place : place, this.#panel.viewColumn);
    const words = jumpInWords(place, now);
    if (words !== undefined) this.#post({ kind: "say", words }, run);
  }

  async #again(): Promise<void> {
    if (this.#isRunning) return;
    this.#isRunning = true;
    const run = await this.#runAgain().finally(() => {
      this.#isRunning = false;
    });
    if (run === undefined) return;
    if (this.#isClosed) return run.close();
    this.#run.close();
    this.#run = run;
    await this.#show();
  }

  /** Asks where to, and writes only there. */
  async #save({ format, window: part }: Saving): Promise<void> {
    const target = await window.showSaveDialog({
      title: format === "svg" ? "Save the Picture" : "Save the Waveforms",
      defaultUri: Uri.joinPath(Uri.parse(this.#run.root), `run.${format}`),
      filters: format === "svg" ? { "SVG picture": ["svg"] } : { "Value change dump": ["vcd"] },
    });
    if (target === undefined) return;
    const run = this.#run;
    const answer = await run.text({ format, window: part });
    if (answer?.kind !== "text") return this.#post({ kind: "cannot", words: whyNot(answer) }, run);
    try {
      await workspace.fs.writeFile(target, new TextEncoder().encode(answer.text));
    } catch (error) {
      void window.showErrorMessage(`${target.fsPath} could not be written: ${String(error)}`);
    }
  }

  /** What is of another run by now is not told. */
  #post(message: ToRibbon, run: HeldRun): void {
    if (run === this.#run && !this.#isClosed) void this.#panel.webview.postMessage(message);
  }
}
