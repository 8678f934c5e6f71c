// A baud divisor has to fit its register. The AVR's UBRR has 12 bits, in two bytes of which the lower one alone is
// often written; a parameter of one byte on the way cuts it as well. What does not fit is cut without a word, and the
// line runs at another rate.
//
// The rule follows the divisor from where it is written to the register and compares what was meant with what
// arrives.

import type { Facts } from "../../facts/facts.ts";
import type { Rate, SerialConstant, SetUp } from "../../facts/serial/serial-facts.ts";
import { baudText, clockText } from "../../figures.ts";
import type { Fix } from "../../finding.ts";
import { baudGeneratorNamed } from "../../model/baud-generators.ts";
import { avrClassic } from "../../model/divisors/avr-classic.ts";
import { formatSources } from "../../model/sources.ts";
import { replaced, spanOf } from "../literal.ts";
import type { Draft, Rule } from "../rule.ts";
import { actualRates, expectedRate, samplingOf } from "../serial/expected-rate.ts";
import { isSpoilt } from "../spoilt.ts";

type Divisor = Extract<Rate, { kind: "divisor" }>;

export const divisorRange: Rule = {
  id: "board/divisor-range",
  title: "A baud divisor that its register cannot hold",
  severity: "error",
  why:
    "The register keeps the bits that it has and drops the rest, so that the line runs at a rate that nobody chose. The " +
    "compiler need not say a word.",
  wrong: {
    "main.c": `// @wire board atmega328p clock=16MHz
// @wire serial uart=0 report=two-button
#include <avr/io.h>
int main(void) {
  UBRR0L = 832; /* the register has 8 bits, the divisor 10 */
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01);
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
  UBRR0H = 832 >> 8;
  UBRR0L = 832 & 0xFF;
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01);
  for (;;) {
    UDR0 = 'M';
  }
}
`,
  },
  source: formatSources(avrClassic.sources),
  *check(facts) {
    for (const setUp of facts.serial.setUps) {
      const { rate } = setUp;
      if (rate.kind !== "divisor" || rate.held === rate.intended || isSpoilt(facts, setUp.span)) continue;
      yield cutDivisor(facts, setUp, rate);
    }
    for (const constant of facts.serial.constants) yield* tooLarge(facts, constant);
  },
};

const largest = Math.max(...avrClassic.samplings.map(({ registerRange }) => registerRange.max));

function cutDivisor(facts: Facts, setUp: SetUp, rate: Divisor): Draft {
  const clockHz = facts.board.clock?.hz;
  const [actual] = actualRates(setUp, clockHz);
  const makes =
    actual === undefined || clockHz === undefined
      ? ""
      : `, which makes ${baudText(actual)} baud at ${clockText(clockHz)}`;
  const isTooLarge = rate.intended > largest || rate.intended < 0;
  const limit = isTooLarge || rate.written === "whole" ? largest : BYTE;
  return {
    span: spanOf(setUp.span),
    message: `${holder(setUp, rate, isTooLarge)}: ${rate.intended} becomes ${rate.held}${makes}; ${remedy(facts, setUp, rate, isTooLarge)}`,
    measured: { value: rate.intended, unit: "none" },
    limit: { atLeast: 0, atMost: limit, unit: "none" },
    source: formatSources(avrClassic.sources),
    related: [],
    fixes: fixesFor(setUp, rate, isTooLarge),
  };
}

const BYTE = 0xff;

function holder(setUp: SetUp, rate: Divisor, isTooLarge: boolean): string {
  if (isTooLarge) return `the divisor register goes up to ${largest}`;
  if (rate.written === "low byte") return `${setUp.target?.name ?? "the low byte"} holds 8 bits`;
  return "a byte on the way to the register cuts the divisor";
}

function remedy(facts: Facts, setUp: SetUp, rate: Divisor, isTooLarge: boolean): string {
  if (!isTooLarge) {
    if (rate.written !== "low byte") return "pass it as a 16-bit value";
    const whole = setUp.target?.whole;
    return whole === undefined ? "write the high byte as well" : `write ${whole}, or the high byte as well`;
  }
  const clockHz = facts.board.clock?.hz;
  const [actual] = actualRates(setUp, clockHz);
  const expected = actual === undefined ? undefined : expectedRate(facts, setUp, actual);
  if (clockHz === undefined || expected === undefined)
    return "divide by 16 (8 with U2X) times the rate, less one";
  const nearest = avrClassic.nearest(clockHz, expected.baud, samplingOf(rate.samples ?? 16));
  return nearest.kind === "setting"
    ? `${nearest.setting.value} makes ${baudText(nearest.actualBaud)}`
    : "no divisor makes a rate so slow at this clock";
}

function fixesFor(setUp: SetUp, rate: Divisor, isTooLarge: boolean): readonly Fix[] {
  const { target } = setUp;
  if (isTooLarge || rate.written !== "low byte" || target?.whole === undefined) return [];
  return [{ title: `Write ${target.whole}`, edits: [replaced(target.span, target.whole)] }];
}

/** A constant that a note calls a divisor, larger than any register of the chip's generators. */
function* tooLarge(facts: Facts, constant: SerialConstant): Generator<Draft> {
  if (constant.quantity !== "serial.divisor" || isSpoilt(facts, constant.span)) return;
  const generators = (facts.board.chip?.baudGenerators ?? []).flatMap((id) => baudGeneratorNamed(id) ?? []);
  const ranges = generators.flatMap(({ samplings }) => samplings.map(({ registerRange }) => registerRange));
  if (ranges.length === 0) return;
  const most = Math.max(...ranges.map(({ max }) => max));
  if (constant.value >= 0 && constant.value <= most) return;
  yield {
    span: spanOf(constant.span),
    message: `${constant.name} = ${constant.value} does not fit ${generators[0]?.register ?? "the register"}, which goes up to ${most}`,
    measured: { value: constant.value, unit: "none" },
    limit: { atLeast: 0, atMost: most, unit: "none" },
    source: formatSources(generators.flatMap(({ sources }) => sources)),
    related: [{ span: spanOf(constant.note), message: "what the note says it is" }],
    fixes: [],
  };
}
