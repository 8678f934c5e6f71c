import { type CodeLens, RequestType } from "vscode-languageserver";
import type { Lens } from "../../../src-core/lens.ts";
import { lensTitle, runOfTitle } from "../../../src-core/present/lenses/lens-title.ts";
import { lineValuesAsMarkdown } from "../../../src-core/present/lenses/line-values-as-markdown.ts";
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
} from "../client-messages/lenses.ts";
import { Positions } from "../positions.ts";
import { answer, type FeatureContext, subjectOf } from "./features.ts";

const movements = new RequestType<ReportSubject, readonly OfferedMovement[], void>(movementsRequest);
const chooseMovement = new RequestType<MovementChosen, null, void>(chooseMovementRequest);
const chooseRun = new RequestType<RunChosen, null, void>(chooseRunRequest);
const lineValues = new RequestType<ReportSubject, LineValuesAnswer, void>(lineValuesRequest);

/** What trials showed, above the functions; and choosing what is tried. Nothing is run here. */
export function registerCodeLenses(context: FeatureContext): void {
  const { connection, service, files, typing } = context;
  connection.onCodeLens(async ({ textDocument }, token) => {
    // An editor asks at each key; what it gets is read when the check has to read the text anyway.
    await typing.quiet();
    return answer(context, "code lenses", token, [], (): CodeLens[] => {
      const subject = subjectOf(context, textDocument.uri);
      const [project] = subject?.projects ?? [];
      if (subject === undefined || project === undefined) return [];
      const positions = new Positions(files);
      return service
        .lenses(project, subject.file)
        .flatMap((lens) => codeLenses(context, project, lens, positions));
    });
  });
  registerChoices(context);
}

function codeLenses(
  { lensCommands }: FeatureContext,
  project: string,
  lens: Lens,
  positions: Positions,
): readonly CodeLens[] {
  const range = positions.rangeOf(lens.span);
  const of = (title: string, command: string, argument: object): CodeLens => ({
    range,
    // Without a command a lens is text.
    command: lensCommands ? { title, command, arguments: [argument] } : { title, command: "" },
  });
  const title = lensTitle(lens);
  if (lens.kind === "firmware") {
    const shown = runOfTitle(lens);
    const on: RunSubject = shown === undefined ? { project } : { project, shown };
    return [of(title, chooseRunCommand, on)];
  }
  const { subject, layout, movement, builds, isStale } = lens;
  const argument: ReportSubject = { project, subject, layout };
  const lines =
    lensCommands && builds && !isStale && movement?.outcome.kind === "ran"
      ? [of("line by line", showLineValuesCommand, argument)]
      : [];
  const on: MovementSubject = movement === undefined ? argument : { ...argument, given: movement.given };
  return [of(title, chooseMovementCommand, on), ...lines];
}

function registerChoices(context: FeatureContext): void {
  const { connection, service, trials } = context;
  connection.onRequest(movements, ({ project, layout }, token) =>
    answer(context, "movements", token, [], () => service.movementsFor(project, layout)),
  );
  connection.onRequest(chooseMovement, ({ project, subject, movement }, token) =>
    answer(context, "a movement", token, null, () => {
      trials.chooseMovement(project, subject, movement);
      return null;
    }),
  );
  connection.onRequest(chooseRun, ({ project, choice }, token) =>
    answer(context, "a run", token, null, () => {
      trials.chooseRun(project, choice);
      return null;
    }),
  );
  connection.onRequest(lineValues, ({ project, subject }, token) =>
    answer(context, "line values", token, { kind: "cannot", message: "" }, (): LineValuesAnswer => {
      const found = service.lineValues(project, subject);
      if (found.kind === "cannot") return found;
      return { kind: "page", markdown: lineValuesAsMarkdown(found.values) };
    }),
  );
}
