import { commands, type Disposable, window } from "vscode";
import {
  chooseMovementCommand,
  chooseMovementRequest,
  chooseRunCommand,
  chooseRunRequest,
  type LineValuesAnswer,
  lineValuesRequest,
  type MovementChosen,
  movementsRequest,
  type OfferedMovement,
  type ReportSubject,
  type RunChosen,
  type RunSubject,
  showLineValuesCommand,
} from "../server/language-server/client-messages/lenses.ts";
import { type Firmware, firmwaresRequest } from "../server/language-server/client-messages/runs.ts";
import type { Checker } from "./checker.ts";
import { chooseAround } from "./choose-run.ts";
import { MarkdownPages } from "./markdown-pages.ts";

/** What a click on a lens does: another movement, another run, or the values that each line stored. */
export class LensCommands implements Disposable {
  readonly #checker: Checker;
  readonly #registered: readonly Disposable[];
  readonly #pages = new MarkdownPages(
    "edgewise-lines",
    "A click on *line by line* above the function shows it again.",
  );
  #shown = 0;

  constructor(checker: Checker) {
    this.#checker = checker;
    this.#registered = [
      commands.registerCommand(chooseMovementCommand, (on: ReportSubject) => this.#chooseMovement(on)),
      commands.registerCommand(chooseRunCommand, (on: RunSubject) => this.#chooseRun(on)),
      commands.registerCommand(showLineValuesCommand, (on: ReportSubject) => this.#showLineValues(on)),
      this.#pages,
    ];
  }

  dispose(): void {
    for (const each of this.#registered) each.dispose();
  }

  async #chooseMovement(on: ReportSubject): Promise<void> {
    const offered = await this.#checker.request<readonly OfferedMovement[]>(movementsRequest, on);
    if (offered === undefined) return;
    const picked = await window.showQuickPick(
      offered.map(({ given, movement }) => ({ label: given, movement })),
      {
        title: `A Movement for ${on.subject.name}`,
        placeHolder: "The lens shows what comes of it; a note `@wire try` keeps one for good",
      },
    );
    if (picked === undefined) return;
    const chosen: MovementChosen = { ...on, movement: picked.movement };
    await this.#checker.request<null>(chooseMovementRequest, chosen);
  }

  async #chooseRun({ project }: RunSubject): Promise<void> {
    const firmwares = await this.#checker.request<readonly Firmware[]>(firmwaresRequest, {});
    const offered = firmwares?.find((each) => each.project === project);
    if (offered === undefined) return;
    const choice = await chooseAround(offered, "Another Run");
    if (choice === undefined) return;
    const chosen: RunChosen = { project, choice };
    await this.#checker.request<null>(chooseRunRequest, chosen);
  }

  async #showLineValues(on: ReportSubject): Promise<void> {
    const answer = await this.#checker.request<LineValuesAnswer>(lineValuesRequest, on);
    if (answer === undefined) return;
    if (answer.kind === "cannot") {
      void window.showInformationMessage(`There are no values to show: ${answer.message}.`);
      return;
    }
    // Another run makes another page.
    const name = on.subject.name.replaceAll(/[^\w~]/g, "_");
    await this.#pages.show(`/${++this.#shown}/${name} line by line.md`, answer.markdown);
  }
}
