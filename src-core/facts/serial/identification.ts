import { identificationOf } from "../../model/identification.ts";
import type { ReportLayout } from "../../model/layouts/layout.ts";
import { synchronisation } from "../../model/layouts/synchronisation.ts";
import { idMarks } from "../../model/plug-and-play-id.ts";
import { layoutNamed, reportLayouts } from "../../model/report-layouts.ts";
import type { Source } from "../../model/sources.ts";
import type { Said, Wires } from "../../notes/wires.ts";
import type { Program } from "../../reader/program/program.ts";
import { mentionsOf } from "./mentions.ts";
import type { Sent, SentRun } from "./serial-facts.ts";

/** What the firmware says of itself, beside what a mouse with its layout says. */
export interface Identification {
  readonly layout: ReportLayout;
  readonly said: Said<string>;
  /** What such mice say, the usual first; never empty. */
  readonly sequences: readonly (readonly number[])[];
  readonly usual: readonly number[];
  readonly sources: readonly Source[];
  /** Runs that begin as an identification does, or else those that answer a control line. */
  readonly answers: readonly SentRun[];
  /** The first byte stands somewhere else in the text as well, so that it may be sent by ways that are not seen. */
  readonly mayBeSentUnseen: boolean;
}

/** Undefined where no layout is said, its mice may stay silent, or nothing is seen to be sent. */
export function findIdentification(
  program: Program,
  wires: Wires,
  sent: Sent | undefined,
): Identification | undefined {
  const said = wires.serial.report;
  const layout = said && layoutNamed(said.value);
  const identification = layout && identificationOf(layout.name);
  if (said === undefined || layout === undefined || identification === undefined || sent === undefined)
    return undefined;
  const { sequences, sources } = identification;
  const [usual = []] = sequences;
  const [first] = usual;
  const isSilent = sequences.some((sequence) => sequence.length === 0);
  if (isSilent || first === undefined || sent.runs.length + sent.others.length === 0) return undefined;
  const begins = sent.runs.filter((run) => codesOf(run, layout)[0] === first && !isText(run, layout));
  const answers = begins.length > 0 ? begins : sent.runs.filter((run) => answersLine(run, layout));
  const values = new Set([first, first | (1 << layout.dataBits)]);
  const mentions = mentionsOf(program, values);
  const seen = new Set(begins.map(({ bytes }) => `${bytes[0]?.span.file} ${bytes[0]?.span.start}`));
  const mayBeSentUnseen = mentions.some(({ file, start }) => !seen.has(`${file} ${start}`));
  return { layout, said, sequences, usual, sources, answers, mayBeSentUnseen };
}

/** The bytes as a PC that expects the layout sees them. */
export function codesOf({ bytes }: SentRun, { dataBits }: ReportLayout): readonly number[] {
  return bytes.map(({ byte }) => byte & ((1 << dataBits) - 1));
}

/** More bytes than any identification has, with no id string behind its beginning: something for people to read. */
function isText(run: SentRun, layout: ReportLayout): boolean {
  const codes = codesOf(run, layout);
  if (codes.length <= LONGEST) return false;
  const beginsId = idMarks.some(({ begin }) => codes.slice(1, LONGEST).includes(begin));
  return !beginsId && !knownSequences.some((sequence) => sequence.length > 1 && startsWith(codes, sequence));
}

/** Sent because of a control line, and no report. */
function answersLine(run: SentRun, layout: ReportLayout): boolean {
  if (run.asked === undefined || !run.opened || !run.closed) return false;
  const [first = 0, ...others] = codesOf(run, layout);
  const { mask, value } = synchronisation(layout);
  const begins = (code: number): boolean => (code & mask) === value;
  const isReport =
    others.length + 1 >= layout.bytes.length && begins(first) && !others.some((code) => begins(code));
  return !isReport;
}

/** What mice of any layout say. */
export const knownSequences: readonly (readonly number[])[] = reportLayouts.flatMap(
  ({ name }) => identificationOf(name)?.sequences ?? [],
);

const LONGEST = Math.max(...knownSequences.map((sequence) => sequence.length));

export function startsWith(codes: readonly number[], sequence: readonly number[]): boolean {
  return sequence.every((code, index) => codes[index] === code);
}
