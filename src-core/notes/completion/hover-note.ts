import type { LexedFile } from "../../reader/lexer/lexed-file.ts";
import { DIRECTIVE_NAMES, type Directive, directiveNamed } from "../grammar/directives.ts";
import { type Match, matchWords, type Role } from "../grammar/match.ts";
import { noteLines } from "../words/note-lines.ts";
import type { Word } from "../words/word.ts";
import type { Hover } from "./completion.ts";
import { type NoteKnowledge, valueMeaning } from "./proposed-values.ts";

/** What the word under the cursor means; undefined outside notes and on words nobody knows. Never throws. */
export function hoverNote(lexed: LexedFile, offset: number, knowledge: NoteKnowledge): Hover | undefined {
  const comment = lexed.comments.find((each) => each.start <= offset && offset < each.end);
  if (comment === undefined) return undefined;
  const line = noteLines(comment, DIRECTIVE_NAMES).find((each) => each.start <= offset && offset <= each.end);
  const [name, ...words] = line?.words ?? [];
  const directive = name?.kind === "plain" ? directiveNamed(name.text) : undefined;
  if (line === undefined || name === undefined || directive === undefined) return undefined;
  if (holds(line.marker, offset) || holds(name, offset)) return hover(name, aboutDirective(directive));
  const match = matchWords(directive, words, name);
  const under = match.assigned.find(({ word }) => holds(word, offset));
  return under && hover(under.word, aboutWord(under.role, under.word, match, knowledge));
}

function holds(word: Word, offset: number): boolean {
  return word.start <= offset && offset < word.end;
}

function hover({ file, start, end }: Word, markdown: string): Hover {
  return { markdown, span: { file, start, end } };
}

function aboutDirective(directive: Directive): string {
  return `**@wire ${directive.name}**: ${directive.title}\n\n${directive.documentation}\n\n\`${directive.example}\``;
}

function aboutWord(role: Role, word: Word, match: Match, knowledge: NoteKnowledge): string {
  switch (role.kind) {
    case "value":
      return valueMeaning(role.named, word.text, knowledge);
    case "key":
      return `\`${role.named.name}\`: ${role.named.documentation}`;
    case "fixed":
      return `\`${word.text}\`: ${role.documentation}`;
    case "field":
      return `\`${word.text}\`: field of \`${match.values.get("layout")?.text ?? "the report"}\``;
    case "operand": {
      const turned = word.text.startsWith("-") ? ", which grows the other way than the field" : "";
      return `\`${word.text.replace(/^-/, "")}\` of the code below${turned}`;
    }
  }
}
