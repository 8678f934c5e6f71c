// The PC opens the port for the layout that it expects: seven data bits for the three-byte layouts, eight for the
// five-byte one, no parity. Seven bits may be followed by more than one stop bit, and eight bits of which the highest is
// always 1 look the same on the wire.
//
// The rule reads the format out of the frame bits of the UART's registers, or of the format given to `begin`, and takes
// 8N1 where nothing sets it: that is what the hardware and the core start with. It compares with the format that a
// note or edgewise.json says, or with what fits the layout that they say. Without either, nothing is compared.

import type { Facts } from "../../facts/facts.ts";
import type { SetUp } from "../../facts/serial/serial-facts.ts";
import { hexText } from "../../figures.ts";
import type { Fix } from "../../finding.ts";
import { UCSRC_FRAME_BITS, ucsrcValue } from "../../model/avr-frames.ts";
import {
  acceptance,
  formatLineFormat,
  type LineFormat,
  lineFormatSource,
  preferredLineFormat,
} from "../../model/line-formats.ts";
import { formatSource } from "../../model/sources.ts";
import { inserted, literalToken, replaced, spanOf } from "../literal.ts";
import type { Draft, Rule } from "../rule.ts";
import { speaker } from "./expected-rate.ts";

export const lineFormat: Rule = {
  id: "serial/line-format",
  title: "A line format that the PC does not read",
  severity: "error",
  why:
    "The PC counts bits: with one too many or a parity bit among them, it finds the stop bit where a data bit is, drops the " +
    "byte, and the mouse is not found or jumps.",
  wrong: {
    "main.c": `// @wire board atmega328p clock=16MHz
// @wire serial uart=0 report=two-button
#include <avr/io.h>
int main(void) {
  UBRR0 = 832;
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01) | _BV(UCSZ00); /* eight data bits */
  for (;;) {
    UDR0 = 'M';
  }
}
`,
  },
  right: {
    "main.c": `// @wire board atmega328p clock=16MHz
// @wire serial uart=0 report=two-button
#include <avr/io.h>
int main(void) {
  UBRR0 = 832;
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01); /* seven data bits */
  for (;;) {
    UDR0 = 'M';
  }
}
`,
  },
  source: formatSource(lineFormatSource),
  *check(facts) {
    const { mouseSetUps } = facts.serial;
    const judged = mouseSetUps.map((setUp) => ({ setUp, fault: faultOf(facts, setUp) }));
    if (judged.some(({ fault }) => fault === undefined)) return;
    for (const { setUp, fault } of judged) if (fault !== undefined) yield draftFor(setUp, fault);
  },
};

interface Fault {
  readonly format: LineFormat;
  readonly right: LineFormat;
  /** "a two-button mouse needs 7N1" */
  readonly words: string;
  readonly related: Draft["related"];
}

function faultOf({ serial, wires }: Facts, setUp: SetUp): Fault | undefined {
  const { format } = setUp.format;
  const wanted = serial.wantedLine;
  if (format === undefined || wanted === undefined) return undefined;
  const related = [{ span: spanOf(wanted.span), message: "what is wanted" }];
  if (wanted.kind === "format") {
    if (isSame(format, wanted.format) || looksTheSame(setUp, format, wanted.format)) return undefined;
    const words = `${speaker(wanted.span.file)} asks for ${formatLineFormat(wanted.format)}`;
    return { format, right: wanted.format, words, related };
  }
  const right = preferredLineFormat(wanted.layout);
  const name = wires.serial.report?.value ?? wanted.layout.name;
  const accepted = acceptance(wanted.layout, format);
  switch (accepted.kind) {
    case "accepted":
      return undefined;
    case "accepted-with-bit-7-set":
      if (setUp.topBit === "set") return undefined;
      return {
        format,
        right,
        words: `a PC listens to a ${name} mouse with ${formatLineFormat(right)}, and bit 7 is not seen to be set in every byte`,
        related,
      };
    case "refused":
      return {
        format,
        right,
        words: `a PC listens to a ${name} mouse with ${formatLineFormat(right)}: ${accepted.reason}`,
        related,
      };
  }
}

/** A second stop bit does no harm. */
function isSame(format: LineFormat, wanted: LineFormat): boolean {
  return (
    format.dataBits === wanted.dataBits &&
    format.parity === wanted.parity &&
    format.stopBits >= wanted.stopBits
  );
}

/** Eight bits with the top one set are seven bits and a longer stop. */
function looksTheSame({ topBit }: SetUp, format: LineFormat, wanted: LineFormat): boolean {
  const isEight = format.dataBits === 8 && format.parity === "none";
  return isEight && wanted.dataBits === 7 && wanted.parity === "none" && topBit === "set";
}

function draftFor(setUp: SetUp, { format, right, words, related }: Fault): Draft {
  const fix = fixFor(setUp, right);
  return {
    span: spanOf(setUp.format.span ?? setUp.span),
    message: `${reasonFor(setUp)}bytes go out as ${formatLineFormat(format)}, but ${words}`,
    source: formatSource(lineFormatSource),
    related,
    fixes: fix === undefined ? [] : [fix],
  };
}

function reasonFor({ format: { span, register, select } }: SetUp): string {
  if (span === undefined) return "nothing sets the format, so ";
  if (select?.takenBy === undefined) return "";
  return `${register} is written without ${select.name}, so ${select.takenBy} takes the byte and `;
}

function fixFor(setUp: SetUp, right: LineFormat): Fix | undefined {
  const name = formatLineFormat(right);
  const title = `Send ${name}`;
  const { format } = setUp;
  if (setUp.by === "software serial") return undefined;
  if (setUp.by === "core") {
    const text = `SERIAL_${name}`;
    if (format.span !== undefined) return { title, edits: [replaced(format.span, text)] };
    return { title, edits: [inserted(setUp.span.file, setUp.span.end, `, ${text}`)] };
  }
  return registerFix(setUp, right, title);
}

/** The whole value assigned to the register, with its frame bits exchanged. */
function registerFix({ format }: SetUp, right: LineFormat, title: string): Fix | undefined {
  const value = ucsrcValue(right);
  const { expression, register, assigned, span, select } = format;
  if (value === undefined || register === undefined || assigned === undefined || span === undefined)
    return undefined;
  const wanted = select?.mask ?? 0;
  const others = assigned & ~UCSRC_FRAME_BITS;
  if (others !== 0 && others !== wanted) return undefined;
  const token = expression && literalToken(expression);
  if (token !== undefined) return { title, edits: [replaced(token, hexText(value | wanted))] };
  return { title, edits: [replaced(span, bitsText(register, value, select?.name))] };
}

/** `(1 << UCSZ01)`; further bits are joined with `|`. */
function bitsText(register: string, value: number, select: string | undefined): string {
  const number = register.replace(/\D/g, "");
  const names = [`UCSZ${number}0`, `UCSZ${number}1`, `USBS${number}`, `UPM${number}0`, `UPM${number}1`];
  const set = names.filter((_, index) => ((value >> (index + 1)) & 1) === 1);
  const all = select === undefined ? set : [select, ...set];
  return all.length === 0 ? "0" : all.map((each) => `(1 << ${each})`).join(" | ");
}
