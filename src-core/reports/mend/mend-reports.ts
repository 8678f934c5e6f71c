import type { Edit, Fix, Span } from "../../finding.ts";
import type { NoteFacts } from "../../notes/note-facts.ts";
import type { Program } from "../../reader/program/program.ts";
import { visibleRange } from "../../reader/tokens.ts";
import type { ReportFault, ReportTrial } from "../report-trial.ts";
import { tryReports } from "../try-reports.ts";
import { candidatesFor } from "./candidates.ts";
import { isMendedAt } from "./first-look.ts";
import type { TextOf } from "./source-text.ts";

/** The firmware as it would be after a change. */
export interface EditedFirmware {
  readonly program: Program;
  readonly notes: NoteFacts;
  /** It has a fault in the text that was not there before. */
  readonly hasNewFault: () => boolean;
}

export interface Mending {
  readonly textOf: TextOf;
  /** Reads the firmware as it would be; undefined where it can no longer be read. */
  readonly reread: (edits: readonly Edit[]) => EditedFirmware | undefined;
  /** Asked now and then; true gives up. */
  readonly cancelled: (() => boolean) | undefined;
}

/** How many changes are looked at for one fault, and how many of them are tried out over all inputs. */
const mostLooks = 100;
const mostTrials = 10;

/**
 * The trials with a fix in each fault for which one was found: a change after which the fault is gone and no other has
 * come, neither in what the firmware's reports are nor in its text. Undefined when cancelled.
 */
export function mendReports(
  trials: readonly ReportTrial[],
  mending: Mending,
): readonly ReportTrial[] | undefined {
  const mended: ReportTrial[] = [];
  for (const [index, trial] of trials.entries()) {
    const faults: ReportFault[] = [];
    for (const fault of trial.faults) {
      if (mending.cancelled?.() === true) return undefined;
      const fix = fixFor(trials, index, trial, fault, mending);
      if (fix === "cancelled") return undefined;
      faults.push(fix === undefined ? fault : { ...fault, fixes: [fix] });
    }
    mended.push({ ...trial, faults });
  }
  return mended;
}

function fixFor(
  trials: readonly ReportTrial[],
  index: number,
  trial: ReportTrial,
  fault: ReportFault,
  { textOf, reread, cancelled }: Mending,
): Fix | "cancelled" | undefined {
  const before = new Set(trials.flatMap(keysOf));
  const gone = new Set(
    trial.faults.filter((each) => isToldWith(fault, each)).map((each) => keyOf(index, each)),
  );
  const seen = new Set<string>();
  let [looks, tries] = [0, 0];
  for (const candidate of candidatesFor(trial, fault, textOf)) {
    const key = JSON.stringify(candidate.edits);
    if (seen.has(key)) continue;
    seen.add(key);
    if (looks === mostLooks || tries === mostTrials) return undefined;
    looks += 1;
    if (cancelled?.() === true) return "cancelled";
    const edited = reread(candidate.edits);
    if (edited === undefined || !isMendedAt(fault, trial, edited, cancelled)) continue;
    tries += 1;
    const after = tryReports(edited.program, edited.notes, cancelled);
    if (after === undefined) return "cancelled";
    const same = after[index];
    if (same === undefined || after.length !== trials.length || same.calls === 0) continue;
    if (same.notUnderstood.length > trial.notUnderstood.length) continue;
    const left = after.flatMap(keysOf);
    if (left.some((each) => gone.has(each) || !before.has(each)) || edited.hasNewFault()) continue;
    return candidate;
  }
  return undefined;
}

/** Faults of one kind at one place are one to the author: a fix mends all of them. */
function isToldWith(one: ReportFault, other: ReportFault): boolean {
  const [here, there] = [placeOf(one), placeOf(other)];
  const isSame = here.file === there.file && here.start === there.start && here.end === there.end;
  return isSame && one.kind === other.kind;
}

function placeOf({ at }: ReportFault): Span {
  return visibleRange(at.first, at.last);
}

function keysOf(trial: ReportTrial, index: number): readonly string[] {
  return trial.faults.map((fault) => keyOf(index, fault));
}

function keyOf(index: number, { kind, what }: ReportFault): string {
  return JSON.stringify([index, kind, what]);
}
