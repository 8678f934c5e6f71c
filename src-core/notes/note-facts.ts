import type { LexedFile } from "../reader/lexer/lexed-file.ts";
import type { Comment } from "../reader/tokens.ts";
import { type Allowance, allowanceOf } from "./attachment/allowance.ts";
import { type Attached, attachNotes, type DeclarationNote } from "./attachment/attach.ts";
import { checkAgainstCode } from "./attachment/check-against-code.ts";
import type { ReadUnit } from "./attachment/declared.ts";
import { type FileCode, fileCode } from "./attachment/file-code.ts";
import { isSkipped } from "./attachment/groups.ts";
import { noOffsets, type VisibleStarts, visibleStarts } from "./attachment/visible-starts.ts";
import { checkClock } from "./check-clock.ts";
import { checkWires } from "./check-wires.ts";
import { mergeWires } from "./merge-wires.ts";
import { type AllowNote, belongsToProject, type Note } from "./note.ts";
import type { NoteProblem } from "./note-problem.ts";
import { type NotesRead, readNotes } from "./read-notes.ts";
import type { Settings } from "./settings/settings.ts";
import type { Vocabulary } from "./vocabulary.ts";
import type { Wires } from "./wires.ts";

/** What the notes of a project say about its code. */
export interface NoteFacts {
  /** Every note that was understood, in order of file and place. */
  readonly notes: readonly Note[];
  readonly wires: Wires;
  /** means, encodes, decodes and try with their declarations. */
  readonly attached: readonly Attached[];
  readonly allowances: readonly Allowance[];
  /** Everything the four rules of `note/` have to say, except what `applyAllows` finds. */
  readonly problems: readonly NoteProblem[];
}

/**
 * The wires alone, from the comments of some files: enough to choose chip and headers before the code is read.
 * Comments in skipped groups count.
 */
export function readWires(comments: Iterable<Comment>, settings: Settings, vocabulary: Vocabulary): Wires {
  return mergeWires(readNotes(comments, vocabulary).notes, settings.wires).wires;
}

/**
 * Everything the notes say. `files` are the workspace files that were read, each once; `units` as they were
 * read.
 */
export function readNoteFacts(
  files: Iterable<LexedFile>,
  units: readonly ReadUnit[],
  settings: Settings,
  vocabulary: Vocabulary,
): NoteFacts {
  const { notes, problems, codes } = readFiles(files, vocabulary);
  const starts = visibleStarts(units, codes);
  const valid = notes.filter((note) => !belongsToProject(note) || !isNoteSkipped(note, codes, starts));
  const { wires, problems: quarrels } = mergeWires(valid, settings.wires);
  const about = notes.filter((note) => !belongsToProject(note));
  const { attached, problems: lost } = attachNotes(about.filter(isAboutDeclaration), codes, units, starts);
  const { allowances, problems: lostAllows } = placeAllows(about.filter(isAllow), codes);
  return {
    notes,
    wires,
    attached,
    allowances,
    problems: [
      ...problems,
      ...quarrels,
      ...checkWires(wires, vocabulary),
      ...checkClock(
        wires,
        units.map((unit) => unit.preprocessed),
      ),
      ...lost,
      ...lostAllows,
      ...checkAgainstCode(attached),
    ],
  };
}

/** Two boards under `#if` and `#else` do not contradict each other. */
function isNoteSkipped({ span }: Note, codes: ReadonlyMap<string, FileCode>, starts: VisibleStarts): boolean {
  const code = codes.get(span.file);
  return code !== undefined && isSkipped(code, span.start, starts.get(span.file) ?? noOffsets);
}

interface FilesRead extends NotesRead {
  /** Code of the files that hold notes. */
  readonly codes: ReadonlyMap<string, FileCode>;
}

function readFiles(files: Iterable<LexedFile>, vocabulary: Vocabulary): FilesRead {
  const notes: Note[] = [];
  const problems: NoteProblem[] = [];
  const codes = new Map<string, FileCode>();
  for (const lexed of files) {
    const read = readNotes(lexed.comments, vocabulary);
    problems.push(...read.problems);
    if (read.notes.length === 0) continue;
    notes.push(...read.notes);
    codes.set(lexed.file, fileCode(lexed));
  }
  return { notes, problems, codes };
}

function placeAllows(
  notes: readonly AllowNote[],
  codes: ReadonlyMap<string, FileCode>,
): { readonly allowances: readonly Allowance[]; readonly problems: readonly NoteProblem[] } {
  const allowances: Allowance[] = [];
  const problems: NoteProblem[] = [];
  for (const note of notes) {
    const code = codes.get(note.span.file);
    const placed = code === undefined ? undefined : allowanceOf(note, code);
    if (placed === undefined) continue;
    if ("region" in placed) allowances.push(placed);
    else problems.push(placed);
  }
  return { allowances, problems };
}

function isAllow(note: Note): note is AllowNote {
  return note.kind === "allow";
}

function isAboutDeclaration(note: Note): note is DeclarationNote {
  return !belongsToProject(note) && note.kind !== "allow";
}
