import type { Span } from "../../finding.ts";
import { DIRECTIVES } from "../grammar/directives.ts";
import type { AttachedNote } from "../note.ts";
import { type NoteProblem, noteProblem } from "../note-problem.ts";
import { type Declared, declaredIn, type ReadUnit, type Target } from "./declared.ts";
import { codeFrom, type FileCode } from "./file-code.ts";
import { type Stretch, stretchOf } from "./stretch.ts";
import { noOffsets, type VisibleStarts } from "./visible-starts.ts";

/** A note that says something about a declaration; `allow` goes by place alone. */
export type DeclarationNote = Exclude<AttachedNote, { kind: "allow" }>;

/** A note and what it belongs to: one target for each unit that reads the declaration. */
export interface Attached {
  readonly note: DeclarationNote;
  readonly targets: readonly { readonly target: Target; readonly unit: ReadUnit }[];
}

export interface AttachResult {
  readonly attached: readonly Attached[];
  /** `note/unattached` and, where one note would have two targets, `note/mismatch`. */
  readonly problems: readonly NoteProblem[];
}

/**
 * Finds the declaration of every note: the one that ends on the comment's line, or else the next one. Notes in
 * groups that the preprocessor skipped in every unit rest: they belong to nothing and are no fault.
 */
export function attachNotes(
  notes: Iterable<DeclarationNote>,
  files: ReadonlyMap<string, FileCode>,
  units: readonly ReadUnit[],
  starts: VisibleStarts,
): AttachResult {
  const attached: Attached[] = [];
  const problems: NoteProblem[] = [];
  const byFile = declarationsByFile(units, files);
  for (const note of notes) {
    const code = files.get(note.span.file);
    if (code === undefined) continue;
    const found = stretchOf(code, note.comment, starts.get(code.file) ?? noOffsets);
    if (found.kind === "nothing-follows") problems.push(unattached(note, "nothing follows it"));
    if (found.kind !== "found") continue;
    const declared = (byFile.get(code.file) ?? []).filter((each) => liesIn(code, found.stretch, each));
    settle(note, found.stretch, declared, attached, problems);
  }
  return { attached, problems };
}

function declarationsByFile(
  units: readonly ReadUnit[],
  files: ReadonlyMap<string, FileCode>,
): ReadonlyMap<string, readonly Declared[]> {
  const byFile = new Map<string, Declared[]>();
  for (const unit of units) {
    for (const declared of declaredIn(unit)) {
      if (!files.has(declared.file)) continue;
      const known = byFile.get(declared.file);
      if (known === undefined) byFile.set(declared.file, [declared]);
      else known.push(declared);
    }
  }
  return byFile;
}

/** Its name stands in the stretch, and not within the braces of something else. */
function liesIn(code: FileCode, stretch: Stretch, declared: Declared): boolean {
  const { nameStart, target } = declared;
  if (nameStart < stretch.start || nameStart >= stretch.end) return false;
  if (stretch.directive !== undefined) return stretch.directive === "define" && target.kind === "macro";
  if (target.kind === "macro") return false;
  const from = codeFrom(code, stretch.start);
  for (let at = from?.kind === "token" ? from.index : code.tokens.length; ; at++) {
    const token = code.tokens[at];
    if (token === undefined || token.start >= nameStart) return true;
    if (token.text === "{" && code.tokens[from?.kind === "token" ? from.index : at]?.text !== "enum")
      return false;
  }
}

function settle(
  note: DeclarationNote,
  stretch: Stretch,
  declared: readonly Declared[],
  attached: Attached[],
  problems: NoteProblem[],
): void {
  const fitting = declared.filter((each) => fits(note, each.target));
  // Units that define what a header declares know its name's place in the definition, so places are no key.
  const different = new Set(fitting.map((each) => `${each.start} ${each.target.name}`));
  if (different.size > 1) {
    const all = [...new Set(fitting.map((each) => `\`${each.target.name}\``))].join(" and ");
    const message = `this note could mean ${all}: give the one it is for a line of its own`;
    problems.push(noteProblem("note/mismatch", note.span, message));
  } else if (fitting.length > 0) {
    attached.push({ note, targets: fitting.map(({ target, unit }) => ({ target, unit })) });
  } else {
    problems.push(wrongSort(note, stretch, declared));
  }
}

function fits(note: DeclarationNote, target: Target): boolean {
  const wantsFunction = note.kind !== "means";
  return (target.kind === "function") === wantsFunction;
}

function wrongSort(note: DeclarationNote, stretch: Stretch, declared: readonly Declared[]): NoteProblem {
  const [other] = declared;
  if (other !== undefined) {
    const { file, start, end } = other;
    const what = SORTS[other.target.kind];
    const related = [{ span: { file, start, end }, message: `\`${other.target.name}\` is ${what}` }];
    return unattached(note, `\`${other.target.name}\` is ${what}`, related);
  }
  const what =
    stretch.directive === undefined ? "what stands there declares none" : `\`#${stretch.directive}\` is none`;
  return unattached(note, what);
}

const SORTS: Readonly<Record<Target["kind"], string>> = {
  macro: "a macro",
  variable: "a variable",
  enumerator: "an enumerator",
  field: "a field",
  function: "a function",
};

function unattached(
  note: DeclarationNote,
  why: string,
  related: readonly { span: Span; message: string }[] = [],
): NoteProblem {
  const directive = DIRECTIVES.find((each) => each.name === note.kind);
  const wanted = directive?.belongsTo === "constant" ? "a constant" : "a function";
  const message = `\`${note.kind}\` belongs to ${wanted} below it or on its line, but ${why}`;
  return noteProblem("note/unattached", note.span, message, { related });
}
