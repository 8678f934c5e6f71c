// A byte takes 7.5 ms on the line at 1200 baud, in which a mouse clocks a whole report. A firmware that waits for the
// line with interrupts off, or with the mouse kept quiet, misses it.

import { quantity } from "../../model/quantities.ts";
import { formatSources } from "../../model/sources.ts";
import type { Rule } from "../rule.ts";
import { draftsOfRuns } from "../runs/drafts-of-runs.ts";
import { firmwareWith, rightFirmware } from "../runs/right-firmware.ts";

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
  judge: (trials) => draftsOfRuns("serial/blocks-receive", trials),
};
