// A byte takes 7.5 ms on the line at 1200 baud, in which a mouse clocks a whole report. A firmware that waits for the
// line with interrupts off, or with the mouse kept quiet, misses it.
//
// The text shows two ways: interrupts that are turned off while a byte is sent bit by bit, where the mouse's clock makes
// interrupts and is not held; and a program that waits for the mouse in its loop and then for the line, while the next
// report of the mouse is due before the last one has left.

import type { Facts } from "../../facts/facts.ts";
import { timeText } from "../../figures.ts";
import { byteTimeMs, preferredLineFormat } from "../../model/line-formats.ts";
import { quantity } from "../../model/quantities.ts";
import { layoutNamed } from "../../model/report-layouts.ts";
import { formatSources } from "../../model/sources.ts";
import { spanOf } from "../literal.ts";
import type { Draft, Rule } from "../rule.ts";
import { draftsOfRuns } from "../runs/drafts-of-runs.ts";
import { firmwareWith, rightFirmware } from "../runs/right-firmware.ts";
import { rateOf } from "./mouse-rate.ts";

export const blocksReceive: Rule = {
  id: "serial/blocks-receive",
  title: "A mouse that is not heard while a byte goes to the PC",
  severity: "error",
  why: "While the pointer moves, every other report of the mouse is lost: it moves too slowly, in jerks, and clicks get lost.",
  wrong: firmwareWith(
    "  if (report_at < 3) UDR0 = report[report_at++];",
    "  if (report_at < 3) {\n    EIMSK &= ~_BV(INT0);\n    UDR0 = report[report_at++];\n    while (!(UCSR0A & _BV(UDRE0))) {}\n    EIMSK |= _BV(INT0);\n  }",
  ),
  right: rightFirmware,
  source: formatSources(quantity("serial.baud")?.sources ?? []),
  *check(facts) {
    for (const { span, us } of facts.serial.deaf) {
      yield {
        span: spanOf(span),
        message: `interrupts stay off for ${timeText(us)} while a byte goes out, and the edges of the mouse's clock are not heard: hold the clock meanwhile, or send by a timer or a UART`,
        measured: { value: us / MS, unit: "ms" },
        source: blocksReceive.source,
        related: [],
        fixes: [],
      };
    }
    const late = sentTooLong(facts);
    if (late !== undefined) yield late;
  },
  judge: (trials) => draftsOfRuns("serial/blocks-receive", trials),
};

const MS = 1000;

/** A report that is still going out when the mouse's next one comes. */
function sentTooLong(facts: Facts): Draft | undefined {
  const { sent, wantedBaud, mouseSetUps } = facts.serial;
  const { report } = facts.wires.serial;
  const layout = report && layoutNamed(report.value);
  if (sent?.forwards !== "between sends" || sent.mayBeMore || layout === undefined) return undefined;
  const rate = rateOf(facts);
  const first = sent.others.find(({ expression }) => expression !== undefined);
  if (rate === undefined || first === undefined || wantedBaud === undefined) return undefined;
  const format = mouseSetUps.at(-1)?.format.format ?? preferredLineFormat(layout);
  const bytes = layout.optionalByte ?? layout.bytes.length;
  const lasts = bytes * byteTimeMs(format, wantedBaud.baud);
  const every = MS / rate.perSecond;
  if (lasts <= every) return undefined;
  return {
    span: spanOf(first.span),
    message: `a report takes ${timeText(lasts * MS)} on the line, in which nobody listens to the mouse, and the mouse sends one each ${timeText(every * MS)}: hear the mouse by an interrupt, or hold its clock meanwhile`,
    measured: { value: lasts, unit: "ms" },
    limit: { atMost: every, unit: "ms" },
    source: blocksReceive.source,
    related: [{ span: spanOf(rate.byte.span), message: `${rate.perSecond} reports per second` }],
    fixes: [],
  };
}
