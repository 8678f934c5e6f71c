import type { Span } from "../../finding.ts";
import type { LexedFile } from "../../reader/lexer/lexed-file.ts";
import type { Comment } from "../../reader/tokens.ts";
import { fileCode } from "../attachment/file-code.ts";
import { DIRECTIVES, directiveNamed, type NamedValue, type Part } from "../grammar/directives.ts";
import { type Match, matchWords } from "../grammar/match.ts";
import { type NoteWord, splitWords } from "../words/word.ts";
import { type Completion, type Proposal, placed } from "./completion.ts";
import { parametersBelow } from "./parameters-below.ts";
import { type NoteKnowledge, proposedFields, proposedValues } from "./proposed-values.ts";

/**
 * What can be written at `offset` of a note: directives, keys, values, fields, parameters of the function below;
 * `@wire` itself behind an `@` in a comment. Empty outside comments and notes. Never throws.
 */
export function completeNote(
  lexed: LexedFile,
  offset: number,
  knowledge: NoteKnowledge,
): readonly Completion[] {
  const comment = lexed.comments.find((each) => each.start + 2 <= offset && offset <= each.end);
  if (comment === undefined || isBehind(comment, offset)) return [];
  const lineStart = Math.max(lexed.text.lastIndexOf("\n", offset - 1) + 1, comment.start + 2);
  const before = lexed.text.slice(lineStart, offset);
  const started = /(?:^|[\s*/!])(@\w*)$/.exec(before);
  if (started !== null) return placed([MARKER], spanBehind(lexed, offset, started[1]?.length ?? 0));
  const marker = before.lastIndexOf("@wire");
  const body = marker < 0 ? "" : before.slice(marker + "@wire".length);
  if (!/^\s/.test(body)) return [];
  const words = splitWords(lexed.file, body, offset - body.length);
  const isNewWord = /\s$/.test(body) && (words.at(-1)?.kind !== "quoted" || words.at(-1)?.end !== offset);
  const cursor: Cursor = { lexed, comment, offset, knowledge };
  return isNewWord
    ? completeWord(cursor, words, undefined)
    : completeWord(cursor, words.slice(0, -1), words.at(-1));
}

interface Cursor {
  readonly lexed: LexedFile;
  readonly comment: Comment;
  readonly offset: number;
  readonly knowledge: NoteKnowledge;
}

const MARKER: Proposal = {
  label: "@wire",
  kind: "directive",
  detail: "a wire note: says what the code does not",
  documentation: DIRECTIVES.map((each) => `- \`${each.example}\`: ${each.title}`).join("\n"),
  text: "@wire ",
};

/** Behind the `*` that begins the end of a block comment. */
function isBehind(comment: Comment, offset: number): boolean {
  return (
    comment.text.startsWith("/*") &&
    comment.text.length >= 4 &&
    comment.text.endsWith("*/") &&
    offset > comment.end - 2
  );
}

function completeWord(
  cursor: Cursor,
  done: readonly NoteWord[],
  word: NoteWord | undefined,
): readonly Completion[] {
  const [name, ...rest] = done;
  if (name === undefined) return placed(DIRECTIVE_PROPOSALS, wordSpan(cursor, word?.start));
  const directive = directiveNamed(name.text);
  if (directive === undefined || word?.kind === "quoted") return [];
  const match = matchWords(directive, rest, name);
  if (word?.kind === "pair") return completeValue(cursor, match, word);
  const proposals = match.next.flatMap((part) => proposalsFor(part, match, cursor));
  return placed(proposals, wordSpan(cursor, word?.start));
}

const DIRECTIVE_PROPOSALS: readonly Proposal[] = DIRECTIVES.map((directive) => ({
  label: directive.name,
  kind: "directive",
  detail: directive.title,
  documentation: `${directive.documentation}\n\n\`${directive.example}\``,
}));

function proposalsFor(part: Part, match: Match, cursor: Cursor): readonly Proposal[] {
  switch (part.kind) {
    case "value":
      return valuesOf(part, cursor);
    case "word":
      return [{ label: part.word, kind: "key", detail: part.documentation, documentation: "" }];
    case "keys":
      return part.keys
        .filter((key) => !match.values.has(key.name))
        .map((key) => ({
          label: key.name,
          kind: "key",
          detail: key.documentation,
          documentation: "",
          text: `${key.name}=`,
        }));
    case "fields":
      return proposedFields(
        match.values.get("layout")?.text,
        match.fields.map(({ field }) => field.text),
        cursor.knowledge,
      );
  }
}

function completeValue(
  cursor: Cursor,
  match: Match,
  word: Extract<NoteWord, { kind: "pair" }>,
): readonly Completion[] {
  const { key, value } = word;
  const span = wordSpan(cursor, value.start);
  for (const part of match.next) {
    if (part.kind === "fields") return placed(operandsFor(value.text, cursor), span);
    const named = part.kind === "keys" ? part.keys.find((each) => each.name === key.text) : undefined;
    if (named === undefined) continue;
    const comma = value.text.lastIndexOf(",");
    return placed(valuesOf(named, cursor), comma < 0 ? span : wordSpan(cursor, value.start + comma + 1));
  }
  return [];
}

const OPERAND: NamedValue = { name: "operand", value: { kind: "operand" }, documentation: "" };

function operandsFor(written: string, cursor: Cursor): readonly Proposal[] {
  const sign = written.startsWith("-") ? "-" : "";
  return valuesOf(OPERAND, cursor).map((proposal) => ({ ...proposal, text: `${sign}${proposal.label}` }));
}

function valuesOf(named: NamedValue, { lexed, comment, knowledge }: Cursor): readonly Proposal[] {
  const needsNames = named.value.kind === "path" || named.value.kind === "operand";
  return proposedValues(named, knowledge, needsNames ? parametersBelow(fileCode(lexed), comment) : []);
}

/** From the start of what is being written to the end of the word around the cursor. */
function wordSpan({ lexed, comment, offset }: Cursor, start = offset): Span {
  const rest = /^[^\s="*]*/.exec(lexed.text.slice(offset, comment.end));
  return { file: lexed.file, start, end: offset + (rest?.[0].length ?? 0) };
}

function spanBehind({ file }: LexedFile, offset: number, length: number): Span {
  return { file, start: offset - length, end: offset };
}
