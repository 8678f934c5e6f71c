import type { Span } from "../../finding.ts";
import { BUTTONS } from "../note.ts";
import { type NoteProblem, type NoteRule, noteProblem, replacement } from "../note-problem.ts";
import { suggestionFor } from "../suggestion.ts";
import { chipNamed } from "../values/chip.ts";
import { repairedClock } from "../values/clock.ts";
import type { LayoutTerm, Term, Vocabulary } from "../vocabulary.ts";
import type { Word } from "../words/word.ts";
import type { NamedValue } from "./directives.ts";
import { VALUE_SHAPES } from "./value-kinds.ts";

/** Every field that any layout can have, in the order in which they are listed. */
export const LAYOUT_FIELDS: readonly string[] = [
  "x",
  "y",
  "left",
  "right",
  "middle",
  "wheel",
  "button4",
  "button5",
];

/** What is wrong with a value by itself: its form, or a name nobody knows. Pins need the chip and come later. */
export function checkValue(named: NamedValue, word: Word, vocabulary: Vocabulary): NoteProblem | undefined {
  const { value } = named;
  const shape = VALUE_SHAPES[value.kind];
  if (value.kind === "clock") return checkClock(named, word);
  if (!new RegExp(shape.pattern).test(word.text)) {
    const best = repairedForm(value.kind, word.text);
    return faulty(
      "note/syntax",
      word,
      `\`${word.text}\` is not ${shape.what}, such as \`${shape.example}\``,
      best,
    );
  }
  switch (value.kind) {
    case "chip":
      return checkChip(word, vocabulary);
    case "layout":
      return checkLayout(word, value.side, vocabulary.layouts);
    case "quantity":
      return checkTerm(word, "quantity", vocabulary.quantities);
    case "rule":
      return checkTerm(word, "rule", vocabulary.rules);
    case "choice":
      return checkChoice(
        named.name,
        word,
        value.choices.map((choice) => choice.name),
      );
    case "buttons":
      return checkButtons(word);
    case "pin":
    case "uart":
    case "line":
    case "baud":
    case "scale":
    case "reason":
    case "counts":
    case "path":
    case "operand":
      return undefined;
  }
}

/** A field by its layout; `layout` is undefined where the layout itself is not known. */
export function checkField(word: Word, layout: LayoutTerm | undefined): NoteProblem | undefined {
  const fields = layout?.fields ?? LAYOUT_FIELDS;
  if (fields.includes(word.text)) return undefined;
  const { phrase, best } = suggestionFor(word.text, fields);
  const whose = layout === undefined ? "no layout has a field" : `\`${layout.name}\` has no field`;
  return faulty("note/unknown-name", word, `${whose} \`${word.text}\`${phrase}`, best);
}

function checkClock(named: NamedValue, word: Word): NoteProblem | undefined {
  const { what, example, pattern } = VALUE_SHAPES.clock;
  if (new RegExp(pattern).test(word.text)) return undefined;
  const best = repairedClock(word.text);
  const unit = /^\d+(?:\.\d+)?([A-Za-z]+)$/.exec(word.text)?.[1];
  const known = unit === undefined || /^(Hz|kHz|MHz)$/.test(unit);
  return known
    ? faulty("note/syntax", word, `\`${named.name}\` needs ${what}, such as \`${best ?? example}\``, best)
    : faulty(
        "note/unknown-name",
        word,
        `no unit is called \`${unit}\`; a clock has Hz, kHz or MHz, such as \`${best ?? example}\``,
        best,
      );
}

function checkChip(word: Word, vocabulary: Vocabulary): NoteProblem | undefined {
  if (chipNamed(word.text, vocabulary) !== undefined) return undefined;
  return unknown(
    word,
    "chip",
    vocabulary.chips.map((chip) => chip.name),
  );
}

function checkLayout(
  word: Word,
  side: "serial" | "either",
  layouts: readonly LayoutTerm[],
): NoteProblem | undefined {
  const fitting = layouts.filter((layout) => side === "either" || layout.side === side);
  const names = fitting.map((layout) => layout.name);
  if (names.includes(word.text)) return undefined;
  if (!layouts.some((layout) => layout.name === word.text)) return unknown(word, "report layout", names);
  return faulty(
    "note/unknown-name",
    word,
    `\`${word.text}\` is a layout of the PS/2 side; the serial side has ${names.map((name) => `\`${name}\``).join(", ")}`,
    undefined,
  );
}

function checkTerm(word: Word, what: string, terms: readonly Term[]): NoteProblem | undefined {
  const names = terms.map((term) => term.name);
  return names.includes(word.text) ? undefined : unknown(word, what, names);
}

function checkChoice(key: string, word: Word, choices: readonly string[]): NoteProblem | undefined {
  if (choices.includes(word.text)) return undefined;
  const { best } = suggestionFor(word.text, choices);
  const all = choices.map((choice) => `\`${choice}\``).join(" or ");
  return faulty("note/unknown-name", word, `\`${key}\` is ${all}, not \`${word.text}\``, best);
}

function checkButtons(word: Word): NoteProblem | undefined {
  let start = word.start;
  for (const button of word.text.split(",")) {
    const part: Word = { file: word.file, start, end: start + button.length, text: button };
    if (!BUTTONS.some((each) => each === button)) return unknown(part, "button", BUTTONS);
    start = part.end + 1;
  }
  return undefined;
}

function unknown(word: Word, what: string, names: readonly string[]): NoteProblem {
  const { phrase, best } = suggestionFor(word.text, names);
  return faulty("note/unknown-name", word, `no ${what} is called \`${word.text}\`${phrase}`, best);
}

function faulty(rule: NoteRule, span: Span, message: string, best: string | undefined): NoteProblem {
  return noteProblem(rule, span, message, { fixes: best === undefined ? [] : [replacement(span, best)] });
}

/** Letters in the wrong case are the one form that can be set right without guessing. */
function repairedForm(kind: keyof typeof VALUE_SHAPES, text: string): string | undefined {
  const pattern = new RegExp(VALUE_SHAPES[kind].pattern);
  return [text.toUpperCase(), text.toLowerCase()].find((repaired) => pattern.test(repaired));
}
