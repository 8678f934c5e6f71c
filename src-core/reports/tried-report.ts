import type { TryNote } from "../notes/note.ts";
import type { NoteFacts } from "../notes/note-facts.ts";
import type { Program } from "../reader/program/program.ts";
import { visibleRange } from "../reader/tokens.ts";
import type { FunctionSymbol } from "../reader/typed/nodes.ts";
import type { FunctionName, Movement, TrialChoices, TriedReport } from "../trial-details.ts";
import { isRequired } from "./found/found-layout.ts";
import { slotText } from "./judge/texts.ts";
import { runMovement } from "./movement/run-movement.ts";
import type { ReportTrial } from "./report-trial.ts";

/** What a trial showed beyond its faults, with the movement that was chosen, or the note's, run through the code. */
export function triedReport(
  program: Program,
  notes: NoteFacts,
  trial: ReportTrial,
  choices: TrialChoices,
  cancelled?: () => boolean,
): TriedReport {
  const { symbol, layout, found, calls } = trial;
  const subject = functionName(symbol);
  const chosen = choices.movements.find(({ subject: other }) => isSameFunction(other, subject));
  const movement = chosen?.movement ?? triedByNote(program, notes, symbol) ?? usualMovement;
  return {
    subject,
    layout: layout.name,
    bits: found.map((slots, byte) =>
      slots.map((slot, bit) => {
        const required = layout.bytes[byte]?.[bit];
        return { word: slotText(slot), isRequired: required !== undefined && isRequired(slot, required) };
      }),
    ),
    wasRun: calls > 0,
    movement: runMovement(program, trial, movement, cancelled),
  };
}

/** Where nobody says another: both axes and a button, small enough for every layout. */
const usualMovement: Movement = { right: 12, down: 5, wheel: 0, press: ["left"] };

/** By its definition where there is one. */
export function functionName({ at, qualifiedName }: FunctionSymbol): FunctionName {
  return { file: visibleRange(at.first, at.last).file, name: qualifiedName };
}

export function isSameFunction(one: FunctionName, other: FunctionName): boolean {
  return one.file === other.file && one.name === other.name;
}

function triedByNote(program: Program, { attached }: NoteFacts, symbol: FunctionSymbol): TryNote | undefined {
  const wanted = functionName(symbol);
  for (const { note, targets } of attached) {
    if (note.kind !== "try") continue;
    const isOf = targets.some(
      ({ target }) =>
        target.kind === "function" &&
        isSameFunction(functionName(program.definitionOf(target.function) ?? target.function), wanted),
    );
    if (isOf) return note;
  }
  return undefined;
}
