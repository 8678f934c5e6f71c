// A divisor is a number of clock cycles: without the clock nobody can tell what rate it makes. The clock comes from
// a note, from edgewise.json, or from `F_CPU` where the code defines it; a clock that only the build gives to the
// compiler is not seen.
//
// The rule says so once, at the first divisor that could not be checked. Calls of the sketch core that take a rate
// in baud need no clock for it, and delays in milliseconds or microseconds are taken at their word.

import type { Facts } from "../../facts/facts.ts";
import type { Span } from "../../finding.ts";
import { spanOf } from "../literal.ts";
import type { Rule } from "../rule.ts";

export const clockUnknown: Rule = {
  id: "board/clock-unknown",
  title: "A divisor that cannot be checked, because the clock is not known",
  severity: "warning",
  why:
    "The same divisor is right on one board and half or twice the rate on another: it counts cycles of the chip's clock. " +
    "Say the clock once, and every divisor is checked.",
  wrong: {
    "main.c": `// @wire board atmega328p
#include <avr/io.h>
int main(void) {
  UBRR0 = 832;
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
#include <avr/io.h>
int main(void) {
  UBRR0 = 832;
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01);
  for (;;) {
    UDR0 = 'M';
  }
}
`,
  },
  source: "The divisor formulas of the chips' datasheets, all of which have the clock in them",
  *check(facts) {
    if (facts.board.clock !== undefined) return;
    const span = firstNeed(facts);
    if (span === undefined) return;
    const what =
      facts.board.chip === undefined ? "neither the chip nor its clock is known" : "the clock is not known";
    const words =
      facts.board.chip === undefined
        ? "@wire board CHIP clock=16MHz"
        : `@wire board ${facts.board.chip.name} clock=16MHz`;
    yield {
      span: spanOf(span),
      message: `${what}, so no divisor is checked: say it in a note such as \`${words}\`, in edgewise.json, or define F_CPU`,
      related: [],
      fixes: [],
    };
  },
};

/** The first divisor in the code, or else the first constant that a note calls one. */
function firstNeed({ serial }: Facts): Span | undefined {
  const setUp = serial.setUps.find(({ rate, needsClock }) => rate.kind === "divisor" || needsClock);
  if (setUp !== undefined) return setUp.span;
  return serial.constants.find(({ quantity }) => quantity === "serial.divisor")?.span;
}
