// Between bytes the line is at mark: an RXD that reads low at the PC's side of the shifter. Whether the pin has to be
// high or low for that depends on the shifter. A pin that becomes an output before it is high, or a transmitter that
// is turned off, leaves the line at space.
//
// The text shows three of these faults: a UART, which rests high, or a software port where the shifter makes space of that;
// bytes sent bit by bit whose start bit is at the level of mark; and a pin that the program makes an output at the level of
// space and leaves there, for longer than two bytes take or until something is sent. How the shifter turns the levels has to
// be said in a note.

import type { Facts } from "../../facts/facts.ts";
import type { BitBangedByte, SpaceAtRest } from "../../facts/serial/serial-facts.ts";
import { timeText } from "../../figures.ts";
import type { Fix } from "../../finding.ts";
import { quantity } from "../../model/quantities.ts";
import { pinLevel } from "../../model/rs232.ts";
import { formatSources } from "../../model/sources.ts";
import { isStandIn } from "../../reader/tokens.ts";
import type { TypedExpression } from "../../reader/typed/nodes.ts";
import { inserted, spanOf } from "../literal.ts";
import type { Draft, Rule } from "../rule.ts";
import { draftsOfRuns } from "../runs/drafts-of-runs.ts";
import { firmwareWith, rightFirmware } from "../runs/right-firmware.ts";

export const idleLevel: Rule = {
  id: "serial/idle-level",
  title: "A serial line that rests at the wrong level",
  severity: "error",
  why: "The PC takes a long space for a break or for a byte of zeros, and the first byte that follows, the identification, is lost.",
  wrong: firmwareWith(
    "  UCSR0B = _BV(TXEN0);\n",
    "  DDRD |= _BV(PD1);\n  _delay_ms(60);\n  UCSR0B = _BV(TXEN0);\n",
  ),
  right: rightFirmware,
  source: formatSources(quantity("serial.bit-time")?.sources ?? []),
  *check(facts) {
    const { shifter } = facts.wires.serial;
    if (shifter === undefined) return;
    const mark = pinLevel("mark", shifter.value);
    const wrongPort = portAtSpace(facts, mark);
    const turned = facts.serial.bitBanged.filter(({ start }) => start.level === mark);
    if (wrongPort !== undefined) yield wrongPort;
    else if (turned.length > 0) yield* turned.map((byte) => turnedOver(byte, mark, facts));
    else for (const space of facts.serial.spaces) yield leftAtSpace(space, mark, facts);
  },
  judge: (trials) => draftsOfRuns("serial/idle-level", trials),
};

const LEVELS = ["low", "high"] as const;

/** A port whose levels nobody can choose, or that were chosen for another shifter. */
function portAtSpace({ serial, wires, board }: Facts, mark: 0 | 1): Draft | undefined {
  const { shifter } = wires.serial;
  const [setUp] = serial.mouseSetUps;
  if (shifter === undefined || setUp === undefined || board.chip?.kind !== "avr") return undefined;
  const { port } = setUp;
  const rests = port.kind === "uart" ? 1 : port.inverse === undefined ? mark : port.inverse ? 0 : 1;
  if (rests === mark) return undefined;
  const name = port.kind === "uart" ? "the UART" : port.name;
  const how = shifter.value === "none" ? "without an inverting shifter" : "behind an inverting shifter";
  return {
    span: spanOf(shifter.span),
    message: `${name} rests ${LEVELS[rests]}, which ${how} is space on the line: between bytes it must rest at mark`,
    source: idleLevel.source,
    related: [{ span: spanOf(setUp.span), message: "where it is set up" }],
    fixes: [],
  };
}

function turnedOver({ start }: BitBangedByte, mark: 0 | 1, { wires }: Facts): Draft {
  const { shifter } = wires.serial;
  return {
    span: spanOf(start.span),
    message: `the start bit is ${LEVELS[mark]}, which behind this shifter is mark, and the line rests at space: turn the levels over`,
    source: idleLevel.source,
    related: shifter === undefined ? [] : [{ span: spanOf(shifter.span), message: "what the shifter does" }],
    fixes: [],
  };
}

function leftAtSpace(space: SpaceAtRest, mark: 0 | 1, facts: Facts): Draft {
  const { us } = space;
  const long = us === undefined ? "until something is sent" : `for ${timeText(us)} at least`;
  return {
    span: spanOf(space.span),
    message: `the line stays at space from here on, ${long}: make the pin ${LEVELS[mark]} before it becomes an output`,
    ...(us === undefined ? {} : { measured: { value: us / 1000, unit: "ms" } }),
    source: idleLevel.source,
    related: [],
    fixes: fixFor(space, mark, facts),
  };
}

/** The level in front of the direction, where a statement can stand there. */
function fixFor({ at, pin, call, span }: SpaceAtRest, mark: 0 | 1, { program }: Facts): readonly Fix[] {
  const { first } = at;
  if (first.macro !== undefined || isStandIn(first.file)) return [];
  const tokens = program.units.find(({ preprocessed }) => preprocessed.tokens.includes(first))?.preprocessed
    .tokens;
  const before = tokens?.[tokens.indexOf(first) - 1]?.text;
  if (before !== ";" && before !== "{" && before !== "}") return [];
  const statement = call === undefined ? latchStatement(pin, mark) : callStatement(call[0], mark);
  if (statement === undefined) return [];
  const title = `Make the pin ${LEVELS[mark]} first`;
  return [{ title, edits: [inserted(span.file, span.start, `${statement} `)] }];
}

function latchStatement(pin: string, mark: 0 | 1): string | undefined {
  const [, letter, bit] = /^P([A-L])([0-7])$/.exec(pin) ?? [];
  if (letter === undefined) return undefined;
  return mark === 1 ? `PORT${letter} |= (1 << ${bit});` : `PORT${letter} &= ~(1 << ${bit});`;
}

function callStatement(pin: TypedExpression | undefined, mark: 0 | 1): string | undefined {
  const name = pin && nameOf(pin);
  return name === undefined ? undefined : `digitalWrite(${name}, ${mark === 1 ? "HIGH" : "LOW"});`;
}

/** As the pin is called there: a macro, a variable, a member or a number. */
function nameOf(expression: TypedExpression): string | undefined {
  if (expression.kind === "convert") return nameOf(expression.operand);
  const { macro, text } = expression.at.first;
  if (macro !== undefined) return macro.within === undefined ? macro.name : undefined;
  switch (expression.kind) {
    case "integer":
      return text;
    case "variable":
      return expression.variable.name;
    case "member":
      return expression.object.kind === "dereference" ? expression.field.name : undefined;
    case "enumerator":
      return expression.enumerator.name;
    default:
      return undefined;
  }
}
