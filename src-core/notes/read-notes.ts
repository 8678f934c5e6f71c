import type { Comment } from "../reader/tokens.ts";
import { buildNote } from "./grammar/build-note.ts";
import { checkField, checkValue } from "./grammar/check-value.ts";
import { DIRECTIVE_NAMES, type Directive, directiveNamed } from "./grammar/directives.ts";
import { type Match, matchWords } from "./grammar/match.ts";
import { VALUE_SHAPES } from "./grammar/value-kinds.ts";
import type { Note } from "./note.ts";
import { type NoteProblem, noteProblem, replacement } from "./note-problem.ts";
import { listed, suggestionFor } from "./suggestion.ts";
import type { Vocabulary } from "./vocabulary.ts";
import { type NoteLine, noteLines } from "./words/note-lines.ts";
import type { Word } from "./words/word.ts";

export interface NotesRead {
  /** In order of their place. */
  readonly notes: readonly Note[];
  readonly problems: readonly NoteProblem[];
}

/**
 * Reads the notes of some comments. A faulty word costs that word, and the note only where it cannot do
 * without; every fault is among the problems (`note/syntax`, `note/unknown-name`, and `note/mismatch` within
 * one note). Never throws.
 */
export function readNotes(comments: Iterable<Comment>, vocabulary: Vocabulary): NotesRead {
  const notes: Note[] = [];
  const problems: NoteProblem[] = [];
  for (const comment of comments) {
    for (const line of noteLines(comment, DIRECTIVE_NAMES)) {
      const note = readNote(line, vocabulary, problems);
      if (note !== undefined) notes.push(note);
    }
  }
  return { notes, problems };
}

function readNote(line: NoteLine, vocabulary: Vocabulary, problems: NoteProblem[]): Note | undefined {
  if (line.marker.text !== "@wire") {
    problems.push(
      noteProblem("note/syntax", line.marker, "a note starts with `@wire` in lower case", {
        fixes: [replacement(line.marker, "@wire")],
      }),
    );
  }
  const directive = findDirective(line, problems);
  const [name] = line.words;
  if (directive === undefined || name === undefined) return undefined;
  const match = matchWords(directive, line.words.slice(1), name);
  problems.push(...match.problems);
  const { values, fields } = soundWords(match, vocabulary, problems);
  const span = { file: line.file, start: line.start, end: line.end };
  const directiveSpan = { file: name.file, start: name.start, end: name.end };
  const words = { span, directive: directiveSpan, comment: line.comment, values, fields };
  return buildNote(directive.name, words, vocabulary);
}

function findDirective(line: NoteLine, problems: NoteProblem[]): Directive | undefined {
  const [name] = line.words;
  if (name === undefined || name.kind !== "plain") {
    const message = `\`@wire\` needs a directive: ${listed(DIRECTIVE_NAMES, "or")}`;
    problems.push(noteProblem("note/syntax", name ?? line, message));
    return undefined;
  }
  const directive = directiveNamed(name.text);
  if (directive !== undefined) return directive;
  const { phrase, best } = suggestionFor(name.text, DIRECTIVE_NAMES);
  const fixes = best === undefined ? [] : [replacement(name, best)];
  problems.push(
    noteProblem("note/unknown-name", name, `no directive is called \`${name.text}\`${phrase}`, { fixes }),
  );
  return undefined;
}

/** Values and fields without those that are faulty by themselves or against each other. */
function soundWords(
  match: Match,
  vocabulary: Vocabulary,
  problems: NoteProblem[],
): Pick<Match, "values" | "fields"> {
  const values = new Map(match.values);
  for (const { word, role } of match.assigned) {
    if (role.kind !== "value") continue;
    const problem = checkValue(role.named, word, vocabulary);
    if (problem === undefined) continue;
    problems.push(problem);
    values.delete(role.named.name);
  }
  dropRivals(values, problems);
  const layoutName = values.get("layout")?.text;
  const layout = vocabulary.layouts.find((each) => each.name === layoutName);
  const fields = match.fields.filter(({ field, operand }) => {
    const problem = checkField(field, layout) ?? checkOperand(operand);
    if (problem !== undefined) problems.push(problem);
    return problem === undefined;
  });
  return { values, fields };
}

function checkOperand(word: Word): NoteProblem | undefined {
  const { what, example, pattern } = VALUE_SHAPES.operand;
  if (new RegExp(pattern).test(word.text)) return undefined;
  return noteProblem("note/syntax", word, `\`${word.text}\` is not ${what}, such as \`${example}\``);
}

/** Pairs of which a note can say only one. */
const RIVALS: readonly (readonly [string, string])[] = [
  ["uart", "tx"],
  ["right", "left"],
  ["down", "up"],
];

function dropRivals(values: Map<string, Word>, problems: NoteProblem[]): void {
  for (const [one, other] of RIVALS) {
    const first = values.get(one);
    const second = values.get(other);
    if (first === undefined || second === undefined) continue;
    const [kept, dropped] = first.start < second.start ? [first, second] : [second, first];
    const related = [
      { span: { file: kept.file, start: kept.start, end: kept.end }, message: "the other one" },
    ];
    const message = `\`${one}\` and \`${other}\` exclude each other: keep one of them`;
    problems.push(noteProblem("note/mismatch", dropped, message, { related }));
    values.delete(dropped === first ? one : other);
  }
}
