import type { Span } from "../../finding.ts";
import { evaluate } from "../../reader/constants/evaluate.ts";
import type { Program } from "../../reader/program/program.ts";
import { visibleRange } from "../../reader/tokens.ts";
import type { At, TypedExpression, TypedStatement } from "../../reader/typed/nodes.ts";
import { walkUnit } from "../../reader/typed/walk.ts";
import type { DataModel, Type } from "../../reader/types/types.ts";

/**
 * Where a firmware does what, for faults that no edge on a wire leads to: what is never done has no other place. Undefined
 * where the source does not tell.
 */
export interface CodePlaces {
  /** A bit from the mouse is read, or else the pins of the port are named. */
  readonly receives: Span | undefined;
  /** Bytes of the mouse are put together to a report. */
  readonly collects: Span | undefined;
  /** RTS is looked at, or else its pin is named. */
  readonly rts: Span | undefined;
  /** What goes on for good: `loop`, the endless loop of `main`, or else `main`. */
  readonly main: Span | undefined;
  /** All loops, whole. */
  readonly loops: readonly Span[];
  /** Variables that an interrupt may change half-way are read here until two readings agree, or otherwise do no harm. */
  readonly undisturbed: readonly Span[];
  /** Bytes that are sent to the mouse, in the order of the source, each with the call that sends it; undefined: not known. */
  readonly commands: readonly { readonly byte: number | undefined; readonly span: Span }[];
}

export function spanOf(at: At | undefined): Span | undefined {
  return at && visibleRange(at.first, at.last);
}

/** Reports of a PS/2 mouse have three or four bytes; some collect one more to see that it does not fit. */
const leastPacket = 3;
const mostPacket = 5;

/**
 * Where an element of a small array of bytes is written, or its address taken, at an index that changes: there a report is
 * collected.
 */
export function collectingPlace({ units, model }: Program): Span | undefined {
  let found: At | undefined;
  const look = (element: TypedExpression): void => {
    if (element.kind === "index" && isPacket(element.array.type) && !isConstant(element.index, model))
      found ??= element.at;
  };
  for (const { typed } of units) {
    walkUnit(typed, {
      expression: (expression) => {
        if (expression.kind === "assign") look(expression.target);
        else if (expression.kind === "address") look(expression.operand);
        return found === undefined;
      },
    });
  }
  return spanOf(found);
}

function isPacket(type: Type): boolean {
  if (type.kind !== "array" || type.of.kind !== "integer" || type.of.bits !== 8) return false;
  const { length = 0 } = type;
  return length >= leastPacket && length <= mostPacket;
}

function isConstant(expression: TypedExpression, model: DataModel): boolean {
  return evaluate(expression, model).kind !== "unknown";
}

export function mainPlace({ functions }: Program): Span | undefined {
  const own = (name: string) =>
    functions.find(
      (each) => each.name === name && each.memberOf === undefined && each.definition !== undefined,
    );
  const main = own("main");
  if (main === undefined) return spanOf(own("loop")?.at);
  const endless = main.definition?.body.statements.findLast(isLoop);
  return spanOf(endless === undefined ? main.at : { first: endless.at.first, last: endless.at.first });
}

export function loopPlaces({ units }: Program): readonly Span[] {
  const found: Span[] = [];
  for (const { typed } of units) {
    walkUnit(typed, {
      statement: (statement) => {
        const span = isLoop(statement) ? spanOf(statement.at) : undefined;
        if (span !== undefined) found.push(span);
        return true;
      },
    });
  }
  return found;
}

function isLoop({ kind }: TypedStatement): boolean {
  return kind === "for" || kind === "while" || kind === "do";
}
