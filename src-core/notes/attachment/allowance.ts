import type { Span } from "../../finding.ts";
import type { AllowNote } from "../note.ts";
import { type NoteProblem, noteProblem } from "../note-problem.ts";
import { codeFrom, codeOnLineOf, type FileCode } from "./file-code.ts";
import { firstTokenOf, lastTokenOf } from "./statement-extent.ts";

/**
 * Where an `allow` holds: the declaration or statement it stands before, with the notes in between, or the one that ends on
 * its line.
 */
export interface Allowance {
  readonly note: AllowNote;
  readonly region: Span;
}

/** The region of an `allow`, or `note/unattached` where nothing follows it. */
export function allowanceOf(note: AllowNote, code: FileCode): Allowance | NoteProblem {
  const region = regionOf(note, code);
  if (region !== undefined) return { note, region: { file: code.file, ...region } };
  const message =
    "`allow` belongs to a declaration or statement below it or on its line, but nothing follows it";
  return noteProblem("note/unattached", note.span, message);
}

type Region = Pick<Span, "start" | "end">;

function regionOf(note: AllowNote, code: FileCode): Region | undefined {
  const { tokens, text } = code;
  const onLine = codeOnLineOf(code, note.comment);
  if (onLine?.kind === "directive") return { start: onLine.start, end: onLine.end };
  if (onLine !== undefined) {
    const lineStart = text.lastIndexOf("\n", note.comment.start - 1) + 1;
    const first = tokens[firstTokenOf(tokens, onLine.index)];
    const start = Math.min(lineStart, first?.start ?? lineStart);
    const opensBody = tokens[onLine.index]?.text === "{" && first !== undefined;
    const last = opensBody ? tokens[lastTokenOf(tokens, tokens.indexOf(first))] : undefined;
    return { start, end: Math.max(note.comment.end, last?.end ?? 0) };
  }
  const next = codeFrom(code, note.comment.end);
  if (next === undefined) return undefined;
  // Wire notes in between, at which some findings stand, are part of it.
  const { end: start } = note.comment;
  if (next.kind === "directive") return { start, end: next.end };
  const last = tokens[lastTokenOf(tokens, next.index)];
  return last === undefined || last.start < next.start ? undefined : { start, end: last.end };
}
