import type { Fix, Span } from "../../finding.ts";
import type { FieldName, MovementName, Slot } from "../../model/layouts/layout.ts";
import { movementRange } from "../../model/layouts/values.ts";
import { visibleRange } from "../../reader/tokens.ts";
import type { ReportFault, ReportTrial } from "../report-trial.ts";
import { isMovement } from "../subject/operands.ts";
import { keepBits, setBits, setBitWhere } from "./bits.ts";
import { clipFix } from "./clip.ts";
import { type CodeExpression, codeOf, type EncoderCode } from "./encoder-code.ts";
import { exchangedNames, exchangedNumbers } from "./exchanges.ts";
import { type Literal, literalsOf } from "./literals.ts";
import { otherNumbers } from "./other-numbers.ts";
import { signedTypes } from "./signed-types.ts";
import { otherSigns, otherTruths } from "./signs.ts";
import { liesIn, ownRange, replaced, type TextOf } from "./source-text.ts";

/**
 * Changes that may mend a fault of an encoder or decoder, the likeliest first. Nobody has tried them: most are wrong.
 * They change what the expression to blame is made of, then the statement around it, then the rest of the function.
 */
export function* candidatesFor(trial: ReportTrial, fault: ReportFault, textOf: TextOf): Generator<Fix> {
  const { definition } = trial.symbol;
  if (definition === undefined) return;
  const search = new Search(trial, fault, textOf);
  yield* search.candidates();
}

class Search {
  readonly #trial: ReportTrial;
  readonly #fault: ReportFault;
  readonly #textOf: TextOf;
  readonly #code: EncoderCode;
  readonly #blamed: Span;
  readonly #statement: Span;
  readonly #literals: readonly Literal[];

  constructor(trial: ReportTrial, fault: ReportFault, textOf: TextOf) {
    this.#trial = trial;
    this.#fault = fault;
    this.#textOf = textOf;
    const { definition } = trial.symbol;
    this.#code = definition === undefined ? { expressions: [], statements: [] } : codeOf(definition, textOf);
    const { file, start, end } = visibleRange(fault.at.first, fault.at.last);
    this.#blamed = { file, start, end };
    this.#statement = this.#statementAround(this.#blamed);
    this.#literals =
      definition === undefined
        ? []
        : literalsOf(definition, textOf, ({ at }) => visibleRange(at.first, at.last));
  }

  *candidates(): Generator<Fix> {
    switch (this.#fault.kind) {
      case "clip-missing":
        yield* this.#clips();
        return;
      case "length":
        yield* this.#removals();
        return;
      case "y-direction":
        yield* this.#signs();
        return;
      case "sync-bit":
        yield* this.#constantBits();
        yield* this.#numbers(this.#blamed);
        yield* this.#numbers(this.#statement);
        return;
      case "button-map":
        yield* this.#truths();
        yield* this.#numbers(this.#blamed);
        yield* this.#exchanges();
        yield* this.#missingBit();
        yield* this.#numbers(this.#statement);
        yield* this.#numbers(undefined);
        return;
      case "sign-lost":
        yield* this.#numbers(this.#blamed);
        yield* this.#numbers(this.#statement);
        yield* this.#types();
        yield* this.#numbers(undefined);
        yield* this.#missingBit();
        return;
      case "layout":
        yield* this.#numbers(this.#blamed);
        yield* this.#exchanges();
        yield* this.#masks();
        yield* this.#numbers(this.#statement);
        yield* this.#shiftedMasks();
        yield* this.#signs();
        yield* this.#numbers(undefined);
    }
  }

  /** Names of the operands of fields, as the note has them. */
  #namesOf(fields: readonly FieldName[]): readonly string[] {
    const { note } = this.#trial;
    return note.fields.flatMap(({ field, operand }) => {
      const name = operand.value.path.at(-1);
      return name !== undefined && fields.some((each) => each === field.value) ? [name] : [];
    });
  }

  #within(place: Span): readonly CodeExpression[] {
    return this.#code.expressions.filter(({ span }) => liesIn(span, place));
  }

  #textAt = ({ span }: CodeExpression): string => this.#textOf(span.file)?.slice(span.start, span.end) ?? "";

  #isEnclosed({ span }: CodeExpression): boolean {
    const text = this.#textOf(span.file) ?? "";
    return text[span.start - 1] === "(" && text[span.end] === ")";
  }

  *#numbers(place: Span | undefined): Generator<Fix> {
    const { place: bit } = this.#fault;
    const among = this.#literals.filter(({ use }) => place === undefined || liesIn(use, place));
    for (const literal of among) yield* otherNumbers(literal, bit, this.#constants());
  }

  *#exchanges(): Generator<Fix> {
    const inStatement = this.#literals.filter(({ use }) => liesIn(use, this.#statement));
    yield* exchangedNumbers(inStatement);
    const names = this.#namesOf(this.#trial.layout.fields);
    const isButton = this.#fault.kind === "button-map";
    const same = names.filter((name) => {
      const field = this.#trial.note.fields.find(({ operand }) => operand.value.path.at(-1) === name)?.field;
      return isButton !== isMovement(field?.value as FieldName);
    });
    const body = this.#body();
    for (const place of [this.#statement, ...(body === undefined ? [] : [body])]) {
      yield* exchangedNames(this.#within(place), [...new Set(same)], this.#textOf);
    }
  }

  #body(): Span | undefined {
    const { definition } = this.#trial.symbol;
    return definition && ownRange(definition.body.at, this.#textOf);
  }

  *#types(): Generator<Fix> {
    const body = this.#body();
    const text = body && this.#textOf(body.file);
    if (body !== undefined && text !== undefined) yield* signedTypes(body, text);
  }

  *#signs(): Generator<Fix> {
    for (const name of this.#namesOf(this.#fault.fields)) {
      yield* otherSigns(this.#code.expressions, name, this.#textAt);
    }
  }

  *#truths(): Generator<Fix> {
    for (const name of this.#namesOf(this.#fault.fields)) {
      yield* otherTruths(this.#within(this.#statement), name, this.#textAt);
    }
  }

  /** The bits of the byte at fault that never change, and what they are. */
  #constants(): { readonly mask: number; readonly levels: number } {
    let [mask, levels] = [0, 0];
    for (const [bit, slot] of this.#slots().entries()) {
      if (slot.kind !== "constant") continue;
      mask |= 2 ** bit;
      levels |= slot.level * 2 ** bit;
    }
    return { mask, levels };
  }

  #slots(): readonly Slot[] {
    const { layout } = this.#trial;
    return layout.bytes[this.#fault.place?.byte ?? 0] ?? [];
  }

  *#constantBits(): Generator<Fix> {
    const { place, fields } = this.#fault;
    const slot = place === undefined ? undefined : this.#slots()[place.bit];
    if (place === undefined || slot?.kind !== "constant") return;
    if (slot.level === 0) yield* this.#masks();
    const { levels } = this.#constants();
    // A constant that is there, but wrong, is mended rather than joined by another.
    if (fields.length === 0) yield* this.#numbers(this.#blamed);
    for (const code of this.#largest()) yield setBits(code, levels, this.#textAt);
  }

  *#masks(): Generator<Fix> {
    const { place, fields } = this.#fault;
    if (place === undefined) return;
    yield* this.#numbers(this.#blamed);
    const own = this.#maskOf((field) => fields.includes(field));
    for (const mask of new Set([own, ...this.#movementMasks(), this.#maskOf(() => true)])) {
      if (mask !== 0)
        for (const code of this.#largest()) yield keepBits(code, mask, this.#isEnclosed(code), this.#textAt);
    }
  }

  /** What reaches beyond its bits is mostly a movement that is shifted with its sign, which may stand further up. */
  *#shiftedMasks(): Generator<Fix> {
    for (const mask of this.#movementMasks()) {
      for (const code of this.#code.expressions) {
        if (code.expression.kind === "arithmetic" && code.expression.operator === ">>")
          yield keepBits(code, mask, this.#isEnclosed(code), this.#textAt);
      }
    }
  }

  /** For each movement its bits in the byte at fault, where they are and moved to the lowest. */
  #movementMasks(): readonly number[] {
    const masks = this.#trial.layout.movements
      .map(({ name }) => this.#maskOf((field) => field === name))
      .filter((mask) => mask !== 0);
    return [...new Set([...masks, ...masks.map((mask) => mask / (mask & -mask))])];
  }

  #maskOf(isKept: (field: FieldName) => boolean): number {
    return this.#slots().reduce(
      (mask, slot, bit) => ("field" in slot && isKept(slot.field) ? mask | (2 ** bit) : mask),
      0,
    );
  }

  /** A button, or the sign of a movement, that nobody put into its bit. */
  *#missingBit(): Generator<Fix> {
    const { place } = this.#fault;
    const slot = place === undefined ? undefined : this.#slots()[place.bit];
    if (place === undefined || slot === undefined || !("field" in slot)) return;
    const condition = this.#conditionOf(slot);
    if (condition === undefined) return;
    const activeLow = slot.kind === "button" && slot.activeLow;
    for (const code of this.#largest())
      yield setBitWhere(code, condition, place.bit, activeLow, this.#textAt);
  }

  /** What the code has to ask for a bit of a button, or for the highest bit of a movement. */
  #conditionOf(slot: Extract<Slot, { readonly field: FieldName }>): string | undefined {
    const { note, layout } = this.#trial;
    const operand = note.fields.find(({ field }) => field.value === slot.field)?.operand;
    if (operand === undefined) return undefined;
    const { negated, bit } = operand.value;
    const text = this.#textOf(operand.span.file)?.slice(operand.span.start, operand.span.end);
    const name = text?.replace(/^-/, "").replace(/\.\d+$/, "");
    if (name === undefined) return undefined;
    if (slot.kind === "button") return bit === undefined ? name : `${name} & ${2 ** bit}`;
    const field = layout.movements.find((each) => each.name === slot.field);
    if (slot.kind !== "movement" || slot.fieldBit !== (field?.bits ?? 0) - 1) return undefined;
    return negated ? `${name} > 0` : `${name} < 0`;
  }

  /** The expressions that make up all that is blamed: one, or none where it comes out of a macro. */
  #largest(): readonly CodeExpression[] {
    return this.#code.expressions
      .filter(({ span }) => span.start === this.#blamed.start && span.end === this.#blamed.end)
      .slice(0, 1);
  }

  *#clips(): Generator<Fix> {
    for (const name of this.#fault.fields) {
      const field = this.#trial.layout.movements.find((each) => each.name === (name as MovementName));
      const [parameter] = this.#namesOf([name]);
      if (field === undefined || parameter === undefined) continue;
      const fix = clipFix(this.#trial.symbol, parameter, movementRange(field), this.#textOf);
      if (fix !== undefined) yield fix;
    }
  }

  /** Without the statement that sends a byte too many, and its line where nothing else is on it. */
  *#removals(): Generator<Fix> {
    const { file, start, end } = this.#statement;
    const text = this.#textOf(file);
    if (text === undefined) return;
    const inside = this.#code.statements.some(
      ({ statement, span }) => statement.kind === "expression" && span.start === start && span.end === end,
    );
    if (!inside) return;
    const before = /(^|\n)[ \t]*$/.exec(text.slice(0, start));
    const after = /^[ \t]*\r?\n/.exec(text.slice(end));
    const whole = before !== null && after !== null;
    const span = whole
      ? { file, start: start - (before[0].length - (before[1]?.length ?? 0)), end: end + after[0].length }
      : { file, start, end };
    yield { title: "Leave that byte out", edits: [replaced(span, "")] };
  }

  #statementAround(place: Span): Span {
    const around = this.#code.statements.filter(
      ({ statement, span }) => statement.kind !== "block" && liesIn(place, span),
    );
    return around.reduce(
      (smallest, { span }) => (span.end - span.start < smallest.end - smallest.start ? span : smallest),
      around[0]?.span ?? place,
    );
  }
}
