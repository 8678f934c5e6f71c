import { type Disposable, ProgressLocation, type Uri, window } from "vscode";
import {
  type Firmware,
  type FirmwaresParams,
  firmwaresRequest,
  type RunParams,
} from "../server/language-server/client-messages/runs.ts";
import type { Checker } from "./checker.ts";
import { chooseRun } from "./choose-run.ts";
import { isRunParams } from "./command-arguments.ts";
import { type HeldRun, heldRun } from "./held-run.ts";
import { RibbonPanel } from "./ribbon-panel.ts";
import { runTitle } from "./run-title.ts";

/** Panels that show a run each. */
export class RibbonPanels implements Disposable {
  readonly #checker: Checker;
  readonly #extension: Uri;
  readonly #open = new Set<RibbonPanel>();
  readonly #following: Disposable;

  constructor(checker: Checker, extension: Uri) {
    this.#checker = checker;
    this.#extension = extension;
    this.#following = checker.onChecked(() => {
      for (const panel of this.#open) void panel.followSources();
    });
  }

  /** Shows the run of `wanted`, or of what is picked where that is not the parameters of a run. */
  async show(wanted: unknown): Promise<void> {
    const params = isRunParams(wanted) ? wanted : await chooseRun(this.#checker, "Show a Run");
    if (params === undefined) return;
    const run = await this.#run(params);
    if (run === undefined) return;
    const all: FirmwaresParams = {};
    const firmwares = await this.#checker.ask<readonly Firmware[]>(firmwaresRequest, all);
    const title = runTitle(params, firmwares ?? []);
    const panel = new RibbonPanel(this.#extension, title, run, () => this.#run(params));
    this.#open.add(panel);
    panel.onClosed(() => this.#open.delete(panel));
  }

  dispose(): void {
    this.#following.dispose();
    for (const panel of this.#open) panel.dispose();
  }

  /** Undefined when it was cancelled, which needs no word, or failed, which is said. */
  async #run(params: RunParams): Promise<HeldRun | undefined> {
    const { stroke, mouse, pc } = params;
    const run = await window.withProgress(
      {
        location: ProgressLocation.Notification,
        title: `Running ${stroke} with mouse ${mouse} at PC ${pc}`,
        cancellable: true,
      },
      (_, cancelled) => heldRun(this.#checker, params, cancelled),
    );
    if (run?.kind !== "cannot") return run;
    void window.showWarningMessage(`The firmware could not be run: ${run.message}.`);
    return undefined;
  }
}
