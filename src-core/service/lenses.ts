import type { Facts } from "../facts/facts.ts";
import type { Span } from "../finding.ts";
import type { FirmwareLens, Lens, ReportLens } from "../lens.ts";
import { layoutNamed } from "../model/report-layouts.ts";
import type { Attached } from "../notes/attachment/attach.ts";
import { visibleRange } from "../reader/tokens.ts";
import type { At, FunctionSymbol } from "../reader/typed/nodes.ts";
import { functionName, isSameFunction } from "../reports/tried-report.ts";
import type { ProjectReading } from "./project-reading.ts";
import type { TrialResult } from "./service.ts";
import { isWholeFirmware } from "./whole-runs/purpose.ts";

/** What trials showed: of the texts as they are, and of those before the last edit. */
export interface KnownTrials {
  readonly now: TrialResult | undefined;
  readonly before: TrialResult | undefined;
}

/** What is to be shown above the functions of a file. */
export function lensesOf({ facts }: ProjectReading, file: string, known: KnownTrials): readonly Lens[] {
  const lenses = [
    ...facts.notes.attached.flatMap((attached) => reportLens(facts, attached, known) ?? []),
    ...(firmwareLens(facts, known) ?? []),
  ];
  return lenses.filter(({ span }) => span.file === file);
}

function reportLens(
  { program }: Facts,
  { note, targets }: Attached,
  { now, before }: KnownTrials,
): ReportLens | undefined {
  const [first] = targets;
  if (note.kind !== "encodes" && note.kind !== "decodes") return undefined;
  if (first?.target.kind !== "function" || layoutNamed(note.layout.value) === undefined) return undefined;
  const symbol = program.definitionOf(first.target.function) ?? first.target.function;
  const subject = functionName(symbol);
  const found = (now ?? before)?.reports.find((each) => isSameFunction(each.subject, subject));
  return {
    kind: "report",
    span: spanOf(symbol.at),
    isStale: now === undefined,
    failure: now?.failure?.partsRan === false ? now.failure.why : undefined,
    subject,
    builds: note.kind === "encodes",
    layout: note.layout.value,
    // What an older text did for another layout says nothing of this one.
    movement: found?.layout === note.layout.value ? found.movement : undefined,
  };
}

/** Above `loop` or `main`: what goes on there is the firmware. */
function firmwareLens(facts: Facts, { now, before }: KnownTrials): readonly FirmwareLens[] {
  const entry = ["loop", "main"].map((name) => definedAs(facts, name)).find((each) => each !== undefined);
  if (entry === undefined || !isWholeFirmware(facts)) return [];
  const span = spanOf(entry.at);
  const failure = now?.wholeRuns === undefined ? now?.failure?.why : undefined;
  // Runs of an older text stand in for some that are to come.
  const runs = now?.wholeRuns ?? (failure === undefined ? before?.wholeRuns : undefined);
  const lens = { kind: "firmware", span, isStale: now?.wholeRuns === undefined, failure, runs } as const;
  const chosen = now?.chosenRun ?? before?.chosenRun;
  if (chosen === undefined) return [{ ...lens, chosen }];
  const isStale = now?.chosenRun === undefined;
  return [
    { ...lens, chosen: undefined },
    { ...lens, isStale, failure: undefined, runs: undefined, chosen },
  ];
}

function definedAs({ program }: Facts, name: string): FunctionSymbol | undefined {
  return program.functions.find(
    (each) => each.name === name && each.memberOf === undefined && each.definition !== undefined,
  );
}

function spanOf({ first, last }: At): Span {
  const { file, start, end } = visibleRange(first, last);
  return { file, start, end };
}
