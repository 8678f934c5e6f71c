import type { Span } from "../../finding.ts";
import type { ReadUnit, Target } from "../../notes/attachment/declared.ts";
import type { NoteFacts } from "../../notes/note-facts.ts";
import { evaluate } from "../../reader/constants/evaluate.ts";
import {
  isStandIn,
  type MacroDefinition,
  type MacroUse,
  type Token,
  visibleRange,
} from "../../reader/tokens.ts";
import type { TypedExpression } from "../../reader/typed/nodes.ts";
import { walkUnit } from "../../reader/typed/walk.ts";
import type { SerialConstant } from "./serial-facts.ts";

const QUANTITIES: readonly SerialConstant["quantity"][] = [
  "serial.baud",
  "serial.divisor",
  "serial.bit-time",
];

/** Constants of which a note says that they are a rate, a divisor or a bit time, as far as their value is known. */
export function serialConstants(notes: NoteFacts): readonly SerialConstant[] {
  return notedConstants(notes, QUANTITIES);
}

/** A constant of which a note says what it stands for. */
export interface NotedConstant<Id extends string> {
  readonly quantity: Id;
  readonly name: string;
  /** In the quantity's unit. */
  readonly value: number;
  /** Its value in the source. */
  readonly span: Span;
  readonly note: Span;
}

/** Constants that notes call one of these quantities, as far as their value is known. */
export function notedConstants<Id extends string>(
  notes: NoteFacts,
  quantities: readonly Id[],
): readonly NotedConstant<Id>[] {
  return notes.attached.flatMap(({ note, targets }) => {
    const quantity = note.kind === "means" ? quantities.find((id) => id === note.quantity.value) : undefined;
    const [first] = targets;
    if (quantity === undefined || first === undefined) return [];
    const found = constantNamedBy(first.target, first.unit);
    return found === undefined ? [] : [{ quantity, name: first.target.name, ...found, note: note.span }];
  });
}

type Found = Pick<SerialConstant, "value" | "span">;

function constantNamedBy(target: Target, unit: ReadUnit): Found | undefined {
  switch (target.kind) {
    case "variable": {
      const { initializer } = target.variable;
      return initializer?.kind === "value" ? evaluated(initializer.value, unit) : undefined;
    }
    case "enumerator":
      return {
        value: Number(target.enumerator.value),
        span: visibleRange(target.enumerator.at.first, target.enumerator.at.last),
      };
    case "macro":
      return valueOfMacro(target.macro, unit);
    case "field":
    case "function":
      return undefined;
  }
}

function evaluated(expression: TypedExpression, unit: ReadUnit): Found | undefined {
  const value = evaluate(expression, unit.typed.model);
  if (value.kind !== "integer" && value.kind !== "floating") return undefined;
  const { first, last } = expression.at;
  return { value: Number(value.value), span: visibleRange(first, last) };
}

/** By a place where the macro is used, or by its body where that is a plain number. */
function valueOfMacro(macro: MacroDefinition, unit: ReadUnit): Found | undefined {
  const span = bodySpan(macro);
  if (span === undefined) return undefined;
  const used = expansionOf(macro, unit);
  const value = used === undefined ? plainNumber(macro.body) : evaluated(used, unit)?.value;
  return value === undefined ? undefined : { value, span };
}

function bodySpan({ body }: MacroDefinition): Found["span"] | undefined {
  const first = body[0];
  const last = body.at(-1);
  if (first === undefined || last === undefined || isStandIn(first.file)) return undefined;
  return { file: first.file, start: first.start, end: last.end };
}

/** The expression that one use of the macro became. */
function expansionOf(macro: MacroDefinition, unit: ReadUnit): TypedExpression | undefined {
  let found: TypedExpression | undefined;
  walkUnit(unit.typed, {
    expression(expression) {
      if (found !== undefined) return false;
      const use = useOf(macro, expression.at.first);
      if (use !== undefined && use === useOf(macro, expression.at.last)) found = expression;
      return found === undefined;
    },
  });
  return found;
}

function useOf(macro: MacroDefinition, token: Token): MacroUse | undefined {
  for (let use = token.macro; use !== undefined; use = use.within) {
    const { definition } = use;
    if (definition?.file === macro.definition?.file && definition?.start === macro.definition?.start)
      return use;
  }
  return undefined;
}

function plainNumber(body: readonly Token[]): number | undefined {
  const [only] = body;
  if (only === undefined || body.length > 1 || only.kind !== "number") return undefined;
  const text = only.text.replace(/[uUlLfF]+$/, "");
  const value = Number(
    /^0\d/.test(text)
      ? `0o${text.slice(1)}`
      : only.text.startsWith("0x")
        ? only.text.replace(/[uUlL]+$/, "")
        : text,
  );
  return Number.isNaN(value) ? undefined : value;
}
