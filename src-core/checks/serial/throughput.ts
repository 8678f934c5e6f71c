// A mouse may report a hundred times per second, and the line carries 44 three-byte reports at most. Reports are to be
// merged while the line is busy, and one is to be sent only when something changed.
//
// In the text the rule looks for a sample rate, by command F3 or the one after a reset, that is more than the line can
// carry, in a firmware that sends on what comes whenever it comes: its endless loop asks neither the line nor the time, never
// holds the mouse's clock, which would make the mouse wait, and nothing in the program is added up.

import { addsUp } from "../../facts/serial/adding-up.ts";
import { plain } from "../../figures.ts";
import type { Fix } from "../../finding.ts";
import { formatLineFormat, preferredLineFormat, reportsPerSecond } from "../../model/line-formats.ts";
import { sampleRates } from "../../model/mouse-settings.ts";
import { quantity } from "../../model/quantities.ts";
import { layoutNamed } from "../../model/report-layouts.ts";
import { formatSources } from "../../model/sources.ts";
import { literalToken, replaced, spanOf } from "../literal.ts";
import { registerHost } from "../ps2/frames.ts";
import type { Rule } from "../rule.ts";
import { draftsOfRuns } from "../runs/drafts-of-runs.ts";
import { RATES_OF_KNOCK, type Rate, rateOf } from "./mouse-rate.ts";

/** On a chip that the bench does not run, so that it shows what the text alone tells. */
const forwarding = (rate: number): string =>
  registerHost(
    100,
    `// @wire serial uart=0 report=two-button shifter=inverting
#include <avr/interrupt.h>

static volatile uint8_t packet[3], place, whole;

ISR(INT0_vect) {
  static uint8_t bit, value, parity;
  uint8_t level = PIND & _BV(PD3) ? 1 : 0;
  if (bit == 0) {
    parity = 0;
  } else if (bit < 10) {
    parity ^= level;
    if (bit < 9) value = value >> 1 | level << 7;
  }
  if (++bit < 11) return;
  bit = 0;
  if (!parity || (place == 0 && !(value & 0x08))) {
    place = 0;
    return;
  }
  packet[place] = value;
  if (++place == 3) {
    place = 0;
    whole = 1;
  }
}

static void put(uint8_t value) {
  while (!(UCSRA & _BV(UDRE))) {
  }
  UDR = value;
}

int main(void) {
  UBRRH = 832 >> 8;
  UBRRL = 832 & 0xFF;
  UCSRB = _BV(TXEN);
  UCSRC = _BV(URSEL) | _BV(UCSZ1);
  put('M');
  command(0xF3);
  command(${rate});
  command(0xF4);
  MCUCR = _BV(ISC01);
  GICR = _BV(INT0);
  sei();
  for (;;) {
    if (!whole) continue;
    whole = 0;
    uint8_t x = packet[1], y = -packet[2];
    put(0x40 | (packet[0] & 1) << 5 | (packet[0] & 2) << 3 | (y >> 4 & 0x0C) | x >> 6);
    put(x & 0x3F);
    put(y & 0x3F);
  }
}
`,
  ).replace("atmega328p", "atmega32");

export const throughput: Rule = {
  id: "serial/throughput",
  title: "A serial line that cannot keep up, or is kept busy for nothing",
  severity: "warning",
  why: "The pointer lags behind the hand: a queue grows while the mouse moves, and the pointer goes on when the hand has stopped.",
  wrong: { "main.c": forwarding(100) },
  right: { "main.c": forwarding(40) },
  source: formatSources(quantity("serial.baud")?.sources ?? []),
  *check(facts) {
    const { sent, wantedBaud, mouseSetUps } = facts.serial;
    const { report } = facts.wires.serial;
    const layout = report && layoutNamed(report.value);
    if (sent?.forwards !== "by interrupt" || sent.mayBeMore || report === undefined || layout === undefined)
      return;
    if (wantedBaud === undefined) return;
    const rate = rateOf(facts);
    if (rate === undefined) return;
    const format = mouseSetUps.at(-1)?.format.format ?? preferredLineFormat(layout);
    const most = reportsPerSecond(format, wantedBaud.baud, layout.optionalByte ?? layout.bytes.length);
    if (rate.perSecond <= most || addsUp(facts)) return;
    const line = `${wantedBaud.baud} baud as ${formatLineFormat(format)}`;
    yield {
      span: spanOf(rate.byte.span),
      message: `the mouse reports ${rate.perSecond} times per second and each report is sent on, but ${line} carries ${plain(most, 1)}: add up what moves while the line is busy, or ask for fewer reports`,
      measured: { value: rate.perSecond, unit: "report/s" },
      limit: { atMost: most, unit: "report/s" },
      source: throughput.source,
      related: [{ span: spanOf(report.span), message: "the layout of the reports" }],
      fixes: fixFor(rate, most),
    };
  },
  judge: (trials) => draftsOfRuns("serial/throughput", trials),
};

/** The highest rate that the line carries. */
function fixFor({ byte: { expression }, inRow }: Rate, most: number): readonly Fix[] {
  const token = expression && literalToken(expression);
  const rate = Math.max(...sampleRates.filter((each) => each <= most));
  if (token === undefined || inRow < 1 || inRow >= RATES_OF_KNOCK || !Number.isFinite(rate)) return [];
  return [{ title: `Ask for ${rate} reports per second`, edits: [replaced(token, String(rate))] }];
}
