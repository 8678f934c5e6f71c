import { commands, type Disposable, window } from "vscode";
import {
  chooseMovementCommand,
  chooseMovementRequest,
  chooseRunCommand,
  chooseRunRequest,
  type LineValuesAnswer,
  lineValuesRequest,
  type MovementChosen,
  type MovementSubject,
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
import { isMovementSubject, isRunSubject } from "./command-arguments.ts";
import { MarkdownPages } from "./markdown-pages.ts";
import { pickOne } from "./pick-one.ts";
import { shownMovement } from "./shown-movement.ts";

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
      ofLens(chooseMovementCommand, isMovementSubject, (on) => this.#chooseMovement(on)),
      ofLens(chooseRunCommand, isRunSubject, (on) => this.#chooseRun(on)),
      ofLens(showLineValuesCommand, isMovementSubject, (on) => this.#showLineValues(on)),
      this.#pages,
    ];
  }

  dispose(): void {
    for (const each of this.#registered) each.dispose();
  }

  async #chooseMovement({ given: now, ...on }: MovementSubject): Promise<void> {
    const offered = await this.#checker.request<readonly OfferedMovement[]>(movementsRequest, on);
    if (offered === undefined) return;
    const shown = shownMovement(offered, now);
    const items = offered.map(({ given, movement }) => ({ label: given, movement }));
    const picked = await pickOne(
      items,
      {
        title: `A Movement for ${on.subject.name}`,
        placeHolder: "The lens shows what comes of it; a note `@wire try` keeps one for good",
      },
      items.find(({ movement }) => movement === shown?.movement),
    );
    if (picked === undefined) return;
    const chosen: MovementChosen = { ...on, movement: picked.movement };
    await this.#checker.request<null>(chooseMovementRequest, chosen);
  }

  async #chooseRun({ project, shown }: RunSubject): Promise<void> {
    const firmwares = await this.#checker.request<readonly Firmware[]>(firmwaresRequest, {});
    if (firmwares === undefined) return;
    const offered = firmwares.find((each) => each.project === project);
    if (offered === undefined) {
      void window.showInformationMessage("The firmware of this lens is not in the workspace any more.");
      return;
    }
    const choice = await chooseAround(offered, "Another Run", shown);
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

/** A command that lenses carry, with what it is about. */
function ofLens<On>(
  command: string,
  isRight: (value: unknown) => value is On,
  run: (on: On) => Promise<void>,
): Disposable {
  return commands.registerCommand(command, async (on?: unknown) => {
    if (isRight(on)) return run(on);
    void window.showInformationMessage("This is done by a click on a lens above a function.");
  });
}
