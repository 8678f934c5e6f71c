import type { Slot } from "../../model/layouts/layout.ts";
import { formatSources } from "../../model/sources.ts";
import { pathOf } from "../../notes/values/operand.ts";
import { possibleBits } from "../../reader/constants/possible-bits.ts";
import { visibleRange } from "../../reader/tokens.ts";
import { isCalled } from "../../reader/typed/is-called.ts";
import type { TypedExpression } from "../../reader/typed/nodes.ts";
import { walkExpression, walkStatement } from "../../reader/typed/walk.ts";
import type { DataModel } from "../../reader/types/types.ts";
import { around } from "../around.ts";
import { type Explanation, explanation, holds } from "../explanation.ts";
import type { Place } from "../place.ts";
import { bitsOfPart, bitsReadOf, constantOf } from "./lit-bits.ts";
import { type ReportFunction, reportFunctions } from "./report-function.ts";

/** A mask or a shift where a report is built or taken apart: the byte's bits, with those in question marked. */
export function explainReportBits(place: Place): Explanation | undefined {
  const inside = reportFunctions(place.facts).find((each) => isInside(each, place));
  if (inside === undefined) return undefined;
  const chain = around(place).map(({ expression }) => expression);
  const part = partOf(chain);
  const { model } = place.facts.program;
  const found =
    inside.note.kind === "encodes" ? built(inside, chain, part, model) : taken(inside, chain, part, model);
  const slots = found && inside.layout.bytes[found.byte];
  if (found === undefined || slots === undefined || found.bits === 0) return undefined;
  const { file, start, end } = visibleRange(found.shown.at.first, found.shown.at.last);
  return explanation({ file, start, end }, headingOf(inside, found, slots), [
    `\`\`\`text\n${bitRows(slots, found)}\n\`\`\``,
    `Source: ${formatSources(inside.layout.sources)}.`,
  ]);
}

/** Bits of one byte of the report. */
interface Lit {
  /** From 0. */
  readonly byte: number;
  readonly bits: number;
  /** What the hover is about. */
  readonly shown: TypedExpression;
}

function isInside({ function: { definition } }: ReportFunction, { file, offset }: Place): boolean {
  if (definition === undefined) return false;
  const { first, last } = definition.body.at;
  return holds(visibleRange(first, last), file, offset);
}

/** The innermost mask or shift, or the constant that stands beside one, as `0x20` in `left ? 0x20 : 0`. */
function partOf(chain: readonly TypedExpression[]): TypedExpression | undefined {
  const inner = chain.at(-1);
  const outer = chain.at(-2);
  if (inner?.kind === "integer") return outer !== undefined && picksBits(outer) ? outer : inner;
  return inner !== undefined && picksBits(inner) ? inner : undefined;
}

function picksBits(expression: TypedExpression): boolean {
  return (
    expression.kind === "arithmetic" &&
    (expression.operator === "&" || expression.operator === "<<" || expression.operator === ">>")
  );
}

/** The store of a byte around the place, and the bits that the part gives it. */
function built(
  subject: ReportFunction,
  chain: readonly TypedExpression[],
  part: TypedExpression | undefined,
  model: DataModel,
): Lit | undefined {
  const into = subject.note.kind === "encodes" ? subject.note.into.value : "";
  for (const outer of chain) {
    const stored = storeOf(subject, outer, into, model);
    if (stored === undefined) continue;
    if (part !== undefined) {
      const bits = bitsOfPart(stored.value, part, model);
      if (bits !== 0) return { byte: stored.byte, bits, shown: part };
    }
    // The name of the byte itself.
    const isNamed = stored.target !== undefined && chain.includes(stored.target);
    return isNamed
      ? { byte: stored.byte, bits: possibleBits(stored.value, model), shown: stored.target }
      : undefined;
  }
  return undefined;
}

interface Store {
  readonly byte: number;
  readonly value: TypedExpression;
  /** Undefined where a function takes the byte. */
  readonly target: TypedExpression | undefined;
}

function storeOf(
  subject: ReportFunction,
  expression: TypedExpression,
  into: string,
  model: DataModel,
): Store | undefined {
  if (expression.kind === "assign" || expression.kind === "compound-assign") {
    const byte = elementOf(expression.target, into, model);
    return byte === undefined ? undefined : { byte, value: expression.value, target: expression.target };
  }
  const [value] = isCallOf(expression, into) ? argumentsOf(expression) : [];
  const byte = value && callsOf(subject, into).indexOf(expression);
  return value === undefined || byte === undefined || byte < 0
    ? undefined
    : { byte, value, target: undefined };
}

/** The constant index into the array that a note names. */
function elementOf(expression: TypedExpression, path: string, model: DataModel): number | undefined {
  if (expression.kind !== "index") return undefined;
  const name = pathOf(path).at(-1);
  return name !== undefined && isCalled(expression.array, name)
    ? constantOf(expression.index, model)
    : undefined;
}

function isCallOf(expression: TypedExpression, path: string): boolean {
  const name = pathOf(path).at(-1);
  if (expression.kind === "method-call") return expression.method.name === name;
  if (expression.kind === "unresolved") return expression.form === "call" && expression.name === path;
  return (
    expression.kind === "call" &&
    expression.callee.kind === "function" &&
    expression.callee.function.name === name
  );
}

function argumentsOf(expression: TypedExpression): readonly TypedExpression[] {
  if (expression.kind === "call" || expression.kind === "method-call") return expression.arguments;
  return expression.kind === "unresolved" ? expression.operands : [];
}

/** Calls that send a byte, in the order of the text: the first sends the first byte. */
function callsOf({ function: { definition } }: ReportFunction, into: string): readonly TypedExpression[] {
  const calls: TypedExpression[] = [];
  if (definition === undefined) return calls;
  walkStatement(definition.body, {
    expression(expression) {
      if (isCallOf(expression, into)) calls.push(expression);
      return true;
    },
  });
  return calls;
}

/** The byte that is read around the place, and the bits of it that count. */
function taken(
  subject: ReportFunction,
  chain: readonly TypedExpression[],
  part: TypedExpression | undefined,
  model: DataModel,
): Lit | undefined {
  const from = subject.note.kind === "decodes" ? subject.note.from.value : "";
  const scope = part ?? chain.findLast((each) => elementOf(each, from, model) !== undefined);
  if (scope === undefined) return undefined;
  const reads = readsOf(scope, from, model);
  const [only, other] = reads;
  if (only === undefined || other !== undefined) return undefined;
  const bits = bitsReadOf(outermost(scope, chain), only.expression, model) & 0xff;
  return { byte: only.byte, bits, shown: scope };
}

/** All the masks and shifts that the result of one goes through. */
function outermost(scope: TypedExpression, chain: readonly TypedExpression[]): TypedExpression {
  const outer = chain[chain.indexOf(scope) - 1];
  return outer !== undefined && picksBits(outer) ? outermost(outer, chain) : scope;
}

function readsOf(
  scope: TypedExpression,
  from: string,
  model: DataModel,
): readonly { readonly byte: number; readonly expression: TypedExpression }[] {
  const reads: { byte: number; expression: TypedExpression }[] = [];
  walkExpression(scope, {
    expression(each) {
      const byte = elementOf(each, from, model);
      if (byte !== undefined) reads.push({ byte, expression: each });
      return byte === undefined;
    },
  });
  return reads;
}

function headingOf({ layout }: ReportFunction, { byte, bits }: Lit, slots: readonly Slot[]): string {
  const fields = slots.flatMap((slot, bit) =>
    isLit(bits, bit) && slot.kind !== "ignored" ? [wordOf(slot)] : [],
  );
  const all = slots.every((_, bit) => isLit(bits, bit));
  const what = all || fields.length === 0 ? "" : `: ${fields.toReversed().join(" ")}`;
  return `byte ${byte + 1} of a ${layout.name} report${what}`;
}

/** The bits from the highest down, and below each the sign of those in question. */
function bitRows(slots: readonly Slot[], { bits }: Lit): string {
  const cells = slots.map((slot, bit) => ({
    bit: String(bit),
    word: wordOf(slot),
    mark: isLit(bits, bit) ? "^" : "",
  }));
  const columns = cells.toReversed().map(({ bit, word, mark }) => {
    const width = Math.max(bit.length, word.length);
    return [bit.padEnd(width), word.padEnd(width), mark.repeat(word.length).padEnd(width)];
  });
  return [0, 1, 2]
    .map((row) =>
      `${["bit", "is", ""][row]?.padEnd(3)}  ${columns.map((cell) => cell[row]).join("  ")}`.trimEnd(),
    )
    .join("\n");
}

function isLit(bits: number, bit: number): boolean {
  return ((bits >>> bit) & 1) === 1;
}

/** As the rows of layouts write it. */
export function wordOf(slot: Slot): string {
  switch (slot.kind) {
    case "constant":
      return String(slot.level);
    case "ignored":
      return "-";
    case "button":
      return `${slot.activeLow ? "~" : ""}${slot.field}`;
    case "movement":
      return `${slot.field}${slot.fieldBit}${slot.part === 2 ? "'" : ""}`;
    case "overflow":
      return `${slot.field}!`;
  }
}
