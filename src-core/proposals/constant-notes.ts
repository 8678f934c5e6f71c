import type { Facts } from "../facts/facts.ts";
import type { RequestHold } from "../facts/ps2/ps2-facts.ts";
import type { BitBangedByte } from "../facts/serial/serial-facts.ts";
import type { Span } from "../finding.ts";
import type { NoteProposal } from "../note-proposal.ts";
import { isStandIn, type MacroUse, outermostUse, visibleRange } from "../reader/tokens.ts";
import type { TypedExpression } from "../reader/typed/nodes.ts";
import { withoutConversions } from "../reader/typed/without-conversions.ts";

/** Notes that say what a named constant stands for, where the place it is used at tells. */
export function constantNotes({ ps2, serial, notes }: Facts): readonly NoteProposal[] {
  const noted = new Set(
    notes.attached.flatMap(({ note }) => (note.kind === "means" ? [note.quantity.value] : [])),
  );
  const told = [
    ...ps2.holds.flatMap((hold) =>
      means("ps2.request-hold", holdingConstant(hold), "the clock is held low for it"),
    ),
    ...serial.bitBanged.flatMap((byte) =>
      means("serial.bit-time", bitConstant(byte), "each bit that is sent lasts that long"),
    ),
  ];
  const once = new Map(
    told.map((proposal) => [`${proposal.before.file} ${proposal.before.start}`, proposal]),
  );
  return [...once.values()].filter(({ note }) => !noted.has(note.split(" ")[2] ?? ""));
}

/** A hold of one delay, done once, in microseconds. */
function holdingConstant({ parts, unknown }: RequestHold): TypedExpression | undefined {
  const [part] = parts;
  if (part === undefined || parts.length > 1 || unknown !== undefined) return undefined;
  return part.times === 1 && part.unitUs === 1 ? part.expression : undefined;
}

/** The one constant that times every bit. */
function bitConstant({ bits }: BitBangedByte): TypedExpression | undefined {
  const [first] = bits;
  const constant = first?.expression && namedConstant(first.expression);
  if (constant === undefined) return undefined;
  const same = bits.every(({ expression }) => {
    const other = expression && namedConstant(expression);
    return (
      other !== undefined &&
      other.before.file === constant.before.file &&
      other.before.start === constant.before.start
    );
  });
  return same ? first?.expression : undefined;
}

function means(
  quantity: string,
  expression: TypedExpression | undefined,
  reason: string,
): readonly NoteProposal[] {
  const constant = expression && namedConstant(expression);
  if (constant === undefined) return [];
  const { name, before } = constant;
  return [{ span: constant.span, reason: `\`${name}\`: ${reason}`, note: `@wire means ${quantity}`, before }];
}

interface Constant {
  readonly name: string;
  /** Where it is used. */
  readonly span: Span;
  /** Start of its declaration or `#define`. */
  readonly before: Span;
}

/** The variable or object macro that an expression is, wholly. */
function namedConstant(expression: TypedExpression): Constant | undefined {
  const { first, last } = expression.at;
  const span = visibleRange(first, last);
  const use = first.macro && outermostUse(first.macro);
  if (use !== undefined)
    return use === (last.macro && outermostUse(last.macro)) ? macroConstant(use, span) : undefined;
  const inner = withoutConversions(expression);
  if (inner.kind !== "variable" || inner.variable.initializer?.kind !== "value") return undefined;
  const { name, declarationAt } = inner.variable;
  const { file, start } = visibleRange(declarationAt.first, declarationAt.last);
  return { name, span, before: { file, start, end: start } };
}

function macroConstant({ name, definition, call }: MacroUse, span: Span): Constant | undefined {
  // A call with arguments is longer than its name.
  if (definition === undefined || isStandIn(definition.file) || call.end - call.start !== name.length)
    return undefined;
  const { file, start } = definition;
  return { name, span, before: { file, start, end: start } };
}
