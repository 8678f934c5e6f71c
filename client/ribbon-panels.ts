import {
  type CancellationToken,
  type Disposable,
  ProgressLocation,
  Range,
  Uri,
  ViewColumn,
  type WebviewPanel,
  window,
  workspace,
} from "vscode";
import {
  type CannotRun,
  closeRunNotification,
  type PanelAnswer,
  type PanelParams,
  type Place,
  panelRequest,
  type RunAnswer,
  type RunParams,
  type RunTextAnswer,
  type RunTextParams,
  runRequest,
  runTextRequest,
} from "../server/language-server/client-messages/runs.ts";
import type { Checker } from "./checker.ts";
import { chooseRun } from "./choose-run.ts";
import { viewFolder, viewPage } from "./view-page.ts";
import type { FromRibbon, ToRibbon } from "./views/ribbon/messages.ts";

type Run = Extract<RunAnswer, { kind: "run" }>;

/** A run, and the session of the server that holds it. */
type HeldRun = Run & { readonly session: number };

/** Panels that show a run each. */
export class RibbonPanels implements Disposable {
  readonly #checker: Checker;
  readonly #extension: Uri;
  readonly #open = new Set<WebviewPanel>();

  constructor(checker: Checker, extension: Uri) {
    this.#checker = checker;
    this.#extension = extension;
  }

  /** Shows the run of `wanted`, or of what is picked where that is not the parameters of a run. */
  async show(wanted: unknown): Promise<void> {
    const params = isRunParams(wanted) ? wanted : await chooseRun(this.#checker, "Show a Run");
    if (params === undefined) return;
    const { stroke, mouse, pc } = params;
    const answer = await window.withProgress(
      {
        location: ProgressLocation.Notification,
        title: `Running ${stroke} with mouse ${mouse} at PC ${pc}`,
        cancellable: true,
      },
      (_, cancelled) => this.#run(params, cancelled),
    );
    if (answer === undefined) return;
    const { session } = this.#checker;
    if (answer.kind === "run") this.#openPanel({ ...answer, session }, `${stroke}, ${mouse}, ${pc}`);
    else void window.showWarningMessage(`The firmware could not be run: ${answer.message}.`);
  }

  dispose(): void {
    for (const panel of this.#open) panel.dispose();
  }

  /** Undefined when it was cancelled, which needs no word. */
  async #run(params: RunParams, cancelled: CancellationToken): Promise<RunAnswer | undefined> {
    const answer = await this.#checker.request<RunAnswer>(runRequest, params, cancelled);
    return cancelled.isCancellationRequested ? undefined : answer;
  }

  #openPanel(run: HeldRun, what: string): void {
    const panel = window.createWebviewPanel("edgewise.ribbon", `Run: ${what}`, ViewColumn.Active, {
      enableScripts: true,
      localResourceRoots: [viewFolder(this.#extension)],
      // The run is laid out anew for each window; to begin again at each change of tabs would lose the place.
      retainContextWhenHidden: true,
    });
    this.#open.add(panel);
    const post = (message: ToRibbon): void => void panel.webview.postMessage(message);
    panel.webview.onDidReceiveMessage((message: FromRibbon) => this.#answer(message, run, panel, post));
    panel.onDidDispose(() => {
      this.#open.delete(panel);
      if (this.#isHeld(run)) void this.#checker.notify(closeRunNotification, { run: run.run });
    });
    panel.webview.html = viewPage(panel.webview, this.#extension, "ribbon", "Run");
  }

  async #answer(
    message: FromRibbon,
    held: HeldRun,
    panel: WebviewPanel,
    post: (message: ToRibbon) => void,
  ): Promise<void> {
    const { run, root, overview } = held;
    switch (message.kind) {
      case "ready":
        return post({ kind: "run", overview });
      case "panel": {
        const { from, to, columns } = message;
        const params: PanelParams = { run, from, to, columns };
        const answer = await this.#askOf<PanelAnswer>(held, panelRequest, params);
        return post(
          answer?.kind === "panel"
            ? { kind: "panel", panel: answer.panel, columns }
            : { kind: "cannot", words: whyNot(answer) },
        );
      }
      case "open":
        return openPlace(root, message.place, panel.viewColumn);
      case "save": {
        const { format, window: part } = message;
        return this.#save({ run, format, window: part }, held, post);
      }
    }
  }

  /** Another server knows nothing of a run, or another one by its number. */
  #isHeld({ session }: HeldRun): boolean {
    return session === this.#checker.session;
  }

  async #askOf<Answer>(held: HeldRun, method: string, params: object): Promise<Answer | undefined> {
    return this.#isHeld(held) ? this.#checker.ask<Answer>(method, params) : undefined;
  }

  /** Asks where to, and writes only there. */
  async #save(params: RunTextParams, held: HeldRun, post: (message: ToRibbon) => void): Promise<void> {
    const { format } = params;
    const target = await window.showSaveDialog({
      title: format === "svg" ? "Save the Picture" : "Save the Waveforms",
      defaultUri: Uri.joinPath(Uri.parse(held.root), `run.${format}`),
      filters: format === "svg" ? { "SVG picture": ["svg"] } : { "Value change dump": ["vcd"] },
    });
    if (target === undefined) return;
    const answer = await this.#askOf<RunTextAnswer>(held, runTextRequest, params);
    if (answer?.kind !== "text") return post({ kind: "cannot", words: whyNot(answer) });
    try {
      await workspace.fs.writeFile(target, new TextEncoder().encode(answer.text));
    } catch (error) {
      void window.showErrorMessage(`${target.fsPath} could not be written: ${String(error)}`);
    }
  }
}

/** `undefined` where the server that held the run is gone. */
function whyNot(answer: CannotRun | undefined): string {
  if (answer !== undefined) return `The checker could not answer: ${answer.message}.`;
  return "The checker was restarted and does not hold this run any more. Show it again to look closer.";
}

/** Shows a line of the source beside the run, so that both stay in sight. */
async function openPlace(root: string, place: Place, ribbon: ViewColumn | undefined): Promise<void> {
  const uri = Uri.joinPath(Uri.parse(root), place.file);
  try {
    const document = await workspace.openTextDocument(uri);
    const line = document.lineAt(Math.min(place.line, document.lineCount) - 1);
    const start = line.range.start.with(undefined, Math.min(place.column - 1, line.text.length));
    const shown = window.visibleTextEditors.find(
      (editor) => editor.document.uri.toString() === uri.toString(),
    );
    await window.showTextDocument(document, {
      viewColumn: shown?.viewColumn ?? (ribbon === ViewColumn.One ? ViewColumn.Two : ViewColumn.One),
      preserveFocus: true,
      selection: new Range(start, line.range.end),
    });
  } catch (error) {
    void window.showWarningMessage(`${place.file} could not be opened: ${String(error)}`);
  }
}

function isRunParams(value: unknown): value is RunParams {
  if (typeof value !== "object" || value === null) return false;
  return ["project", "stroke", "mouse", "pc"].every(
    (key) => typeof (value as Record<string, unknown>)[key] === "string",
  );
}
