// Between bytes the line is at mark: an RXD that reads low at the PC's side of the shifter. Whether the pin has to be
// high or low for that depends on the shifter. A pin that becomes an output before it is high, or a transmitter that
// is turned off, leaves the line at space.

import { quantity } from "../../model/quantities.ts";
import { formatSources } from "../../model/sources.ts";
import type { Rule } from "../rule.ts";
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
  judge: (trials) => draftsOfRuns("serial/idle-level", trials),
};
