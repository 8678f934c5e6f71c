import type { Span } from "../../finding.ts";
import { nearestNames } from "../../near-names.ts";
import { type NoteProblem, type NoteProblemDetails, noteProblem, replacement } from "../note-problem.ts";
import { suggestionFor } from "../suggestion.ts";
import type { NoteWord, Word } from "../words/word.ts";
import type { Directive, NamedValue, Part } from "./directives.ts";
import { VALUE_SHAPES } from "./value-kinds.ts";

/** What a word of a note stands for. */
export type Role =
  /** A value at its place, or the value of a key. */
  | { readonly kind: "value"; readonly named: NamedValue }
  | { readonly kind: "key"; readonly named: NamedValue }
  | { readonly kind: "fixed"; readonly documentation: string }
  | { readonly kind: "field" }
  | { readonly kind: "operand" };

export interface AssignedWord {
  readonly word: Word;
  readonly role: Role;
}

export interface FieldPair {
  readonly field: Word;
  readonly operand: Word;
}

/** The words of a note matched to the parts of its directive. Names and values are not looked at yet. */
export interface Match {
  readonly directive: Directive;
  readonly assigned: readonly AssignedWord[];
  /** Values at their places and values of keys, by name. */
  readonly values: ReadonlyMap<string, Word>;
  readonly fields: readonly FieldPair[];
  /** The parts that a further word could belong to. */
  readonly next: readonly Part[];
  readonly problems: readonly NoteProblem[];
}

interface Progress {
  readonly directive: Directive;
  readonly words: readonly NoteWord[];
  at: number;
  readonly assigned: AssignedWord[];
  readonly values: Map<string, Word>;
  readonly fields: FieldPair[];
  readonly problems: NoteProblem[];
  /** The last word, behind which something may be missing. */
  readonly last: Word;
}

/** `words` are those behind the directive; `before` is the word in front of them. */
export function matchWords(directive: Directive, words: readonly NoteWord[], before: Word): Match {
  const progress: Progress = {
    directive,
    words,
    at: 0,
    assigned: [],
    values: new Map(),
    fields: [],
    problems: [],
    last: words.at(-1) ?? before,
  };
  let last = 0;
  for (const [index, part] of directive.parts.entries()) {
    if (progress.at < words.length) last = index;
    if (!takePart(progress, part)) break;
    if (progress.at < words.length) last = index + 1;
  }
  reportLeftOver(progress);
  const next = followingParts(progress, last);
  return {
    directive,
    assigned: progress.assigned,
    values: progress.values,
    fields: progress.fields,
    next,
    problems: progress.problems,
  };
}

/** Parts from `index` on up to the first that cannot be left out. */
function followingParts(progress: Progress, index: number): readonly Part[] {
  const next: Part[] = [];
  for (const part of progress.directive.parts.slice(index)) {
    if (isTaken(progress, part)) continue;
    next.push(part);
    const open = part.kind === "keys" || (part.kind === "value" && part.optional);
    if (!open && !(part.kind === "fields" && progress.fields.length > 0)) break;
  }
  return next;
}

function isTaken(progress: Progress, part: Part): boolean {
  if (part.kind === "value") return progress.values.has(part.name);
  if (part.kind !== "word") return false;
  return progress.assigned.some(({ word, role }) => role.kind === "fixed" && word.text === part.word);
}

/** False where the rest of the note makes no sense any more. */
function takePart(progress: Progress, part: Part): boolean {
  switch (part.kind) {
    case "value":
      return takeValue(progress, part);
    case "word":
      return takeFixed(progress, part.word, part.documentation);
    case "keys":
      return takeKeys(progress, part.keys);
    case "fields":
      return takeFields(progress);
  }
}

function takeValue(progress: Progress, part: Extract<Part, { kind: "value" }>): boolean {
  const word = progress.words[progress.at];
  const wanted = part.value.kind === "reason" ? "quoted" : "plain";
  if (word === undefined || word.kind !== wanted) {
    if (part.optional) return true;
    reportMissingValue(progress, part, word);
    return false;
  }
  progress.at++;
  progress.values.set(part.name, word);
  progress.assigned.push({ word, role: { kind: "value", named: part } });
  if (word.kind === "quoted" && !word.closed) {
    const end = { file: word.file, start: word.end, end: word.end };
    complain(progress, word, 'the closing `"` is missing', { fixes: [replacement(end, '"')] });
    return false;
  }
  return true;
}

function reportMissingValue(progress: Progress, part: NamedValue, word: NoteWord | undefined): void {
  const { directive, words } = progress;
  const { what } = VALUE_SHAPES[part.value.kind];
  if (part.value.kind === "reason" && word !== undefined) {
    const span = { file: word.file, start: word.start, end: progress.last.end };
    const text = words
      .slice(progress.at)
      .map((each) => each.text)
      .join(" ");
    complain(progress, span, "the reason stands in quotes", {
      fixes: [replacement(span, JSON.stringify(text))],
    });
    progress.at = words.length;
    return;
  }
  const place = word ?? progress.last;
  complain(progress, place, `\`${directive.name}\` needs ${what}, as in \`${directive.example}\``);
  progress.at = words.length;
}

function takeFixed(progress: Progress, wanted: string, documentation: string): boolean {
  const word = progress.words[progress.at];
  const { directive } = progress;
  if (word?.kind === "plain") {
    const meant = word.text === wanted || nearestNames(word.text, [wanted], 1).length > 0;
    if (meant) {
      if (word.text !== wanted) {
        const fixes = [replacement(word, wanted)];
        complain(progress, word, `expected \`${wanted}\` instead of \`${word.text}\``, { fixes });
      }
      progress.at++;
      progress.assigned.push({ word: { ...word, text: wanted }, role: { kind: "fixed", documentation } });
      return true;
    }
  }
  const missing =
    wanted === "because"
      ? `the reason is missing: write \`because "..."\``
      : `\`${wanted}\` is missing, as in \`${directive.example}\``;
  complain(progress, word ?? progress.last, missing);
  progress.at = progress.words.length;
  return false;
}

function takeKeys(progress: Progress, keys: readonly NamedValue[]): boolean {
  const { directive } = progress;
  const before = progress.at;
  for (let word = progress.words[progress.at]; word?.kind === "pair"; word = progress.words[progress.at]) {
    progress.at++;
    takeKey(progress, word, keys);
  }
  if (progress.at === before && progress.values.size === 0 && progress.at === progress.words.length) {
    complain(
      progress,
      progress.last,
      `\`${directive.name}\` says nothing yet; write for instance \`${directive.example}\``,
    );
  }
  return true;
}

function takeKey(
  progress: Progress,
  word: Extract<NoteWord, { kind: "pair" }>,
  keys: readonly NamedValue[],
): void {
  const { key, value } = word;
  const named = keys.find((each) => each.name === key.text);
  if (key.text === "" || value.text === "") {
    complain(progress, word, `\`${word.text}\` is not a \`key=value\` (no spaces around \`=\`)`);
  } else if (named === undefined) {
    const { phrase, best } = suggestionFor(
      key.text,
      keys.map((each) => each.name),
    );
    const fixes = best === undefined ? [] : [replacement(key, best)];
    const message = `\`${progress.directive.name}\` has no key \`${key.text}\`${phrase}`;
    progress.problems.push(noteProblem("note/unknown-name", key, message, { fixes }));
  } else if (progress.values.has(named.name)) {
    progress.problems.push(
      noteProblem("note/mismatch", word, `\`${named.name}\` is said twice in this note`),
    );
  } else {
    progress.values.set(named.name, value);
    progress.assigned.push(
      { word: key, role: { kind: "key", named } },
      { word: value, role: { kind: "value", named } },
    );
  }
}

function takeFields(progress: Progress): boolean {
  const { directive, fields } = progress;
  for (let word = progress.words[progress.at]; word?.kind === "pair"; word = progress.words[progress.at]) {
    progress.at++;
    const { key, value } = word;
    if (key.text === "" || value.text === "") {
      complain(progress, word, `\`${word.text}\` is not a \`field=name\` (no spaces around \`=\`)`);
    } else if (fields.some(({ field }) => field.text === key.text)) {
      progress.problems.push(
        noteProblem("note/mismatch", word, `\`${key.text}\` is said twice in this note`),
      );
    } else {
      fields.push({ field: key, operand: value });
      progress.assigned.push(
        { word: key, role: { kind: "field" } },
        { word: value, role: { kind: "operand" } },
      );
    }
  }
  if (fields.length > 0) return true;
  const place = progress.words[progress.at] ?? progress.last;
  complain(progress, place, `\`${directive.name}\` needs \`field=name\`, as in \`${directive.example}\``);
  progress.at = progress.words.length;
  return false;
}

function reportLeftOver(progress: Progress): void {
  const word = progress.words[progress.at];
  if (word === undefined) return;
  const span = { file: word.file, start: word.start, end: progress.last.end };
  const nested = word.text.startsWith("@wire");
  const pairs = progress.directive.parts.some((part) => part.kind === "keys");
  const message = nested
    ? "a further note goes on a line of its own"
    : pairs && word.kind !== "pair"
      ? `\`${word.text}\` is not a \`key=value\` (no spaces around \`=\` or inside a value)`
      : `\`${word.text}\` is too much: \`${progress.directive.name}\` ends before it`;
  complain(progress, span, message);
}

function complain(progress: Progress, span: Span, message: string, details: NoteProblemDetails = {}): void {
  progress.problems.push(noteProblem("note/syntax", span, message, details));
}
