import type { Span } from "../../finding.ts";
import type { Comment } from "../../reader/tokens.ts";
import type { Button, FieldOperand, Note } from "../note.ts";
import { BUTTONS } from "../note.ts";
import { chipNamed } from "../values/chip.ts";
import { parseClock } from "../values/clock.ts";
import { parseOperand } from "../values/operand.ts";
import { parseScale } from "../values/scale.ts";
import type { Vocabulary } from "../vocabulary.ts";
import type { Said } from "../wires.ts";
import type { Word } from "../words/word.ts";
import type { DirectiveName } from "./directives.ts";
import type { FieldPair } from "./match.ts";

/** The words of a note that passed every check. */
export interface SoundWords {
  readonly span: Span;
  readonly directive: Span;
  readonly comment: Comment;
  readonly values: ReadonlyMap<string, Word>;
  readonly fields: readonly FieldPair[];
}

/** The note that `words` make, or undefined where a word it cannot do without is missing. */
export function buildNote(name: DirectiveName, words: SoundWords, vocabulary: Vocabulary): Note | undefined {
  const { span, directive, comment, values } = words;
  const base = { span, directive, comment };
  const text = (key: string) => said(values.get(key), (value) => value);
  const number = (key: string) => said(values.get(key), Number);
  switch (name) {
    case "board": {
      const chip = said(values.get("chip"), (value) => chipNamed(value, vocabulary)?.name);
      return { kind: "board", ...base, board: { chip, clockHz: said(values.get("clock"), parseClock) } };
    }
    case "ps2": {
      const pullups = said(values.get("pullups"), oneOf("internal", "external"));
      return { kind: "ps2", ...base, ps2: { clock: text("clock"), data: text("data"), pullups } };
    }
    case "serial": {
      const serial = {
        uart: number("uart"),
        tx: text("tx"),
        rts: text("rts"),
        dtr: text("dtr"),
        report: text("report"),
        shifter: said(values.get("shifter"), oneOf("inverting", "none")),
        baud: number("baud"),
        line: text("line"),
        scale: said(values.get("scale"), parseScale),
      };
      return { kind: "serial", ...base, serial };
    }
    case "means": {
      const quantity = text("quantity");
      return quantity && { kind: "means", ...base, quantity };
    }
    case "encodes": {
      const layout = text("layout");
      const into = text("into");
      return layout && into && { kind: "encodes", ...base, layout, fields: operands(words.fields), into };
    }
    case "decodes": {
      const layout = text("layout");
      const from = text("from");
      return layout && from && { kind: "decodes", ...base, layout, from, fields: operands(words.fields) };
    }
    case "try":
      return { kind: "try", ...base, ...movement(values) };
    case "allow": {
      const rule = text("rule");
      const reason = text("reason");
      return rule && reason && { kind: "allow", ...base, rule, reason };
    }
  }
}

function said<T>(word: Word | undefined, read: (text: string) => T | undefined): Said<T> | undefined {
  if (word === undefined) return undefined;
  const value = read(word.text);
  if (value === undefined) return undefined;
  return { value, span: { file: word.file, start: word.start, end: word.end } };
}

function oneOf<T extends string>(...names: readonly T[]): (text: string) => T | undefined {
  return (text) => names.find((name) => name === text);
}

function operands(fields: readonly FieldPair[]): readonly FieldOperand[] {
  return fields.flatMap((pair) => {
    const field = said(pair.field, (text) => text);
    const operand = said(pair.operand, parseOperand);
    return field === undefined || operand === undefined ? [] : [{ field, operand }];
  });
}

function movement(values: ReadonlyMap<string, Word>): {
  right: number;
  down: number;
  wheel: number;
  press: readonly Button[];
} {
  const counts = (key: string) => Number(values.get(key)?.text ?? 0);
  const button = oneOf<Button>(...BUTTONS);
  const pressed = values.get("press")?.text.split(",") ?? [];
  return {
    right: counts("right") - counts("left"),
    down: counts("down") - counts("up"),
    wheel: counts("wheel"),
    press: pressed.flatMap((name) => button(name) ?? []),
  };
}
