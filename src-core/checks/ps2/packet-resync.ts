// Bytes of a report carry no number. A mouse that is pulled out, restarts or loses a byte leaves a part of a report
// behind; what comes next begins a new one only where the firmware notices the gap, or that bit 3 of the first byte is
// not set.
//
// In the text the rule looks at bytes of the mouse that a counter puts into an array until a report is whole, and at those
// for which a state says which one comes next. Something has to test bit 3 or the overflow bits of a byte, or to start
// again: after a silence, say.

import { layouts } from "../../model/report-layouts.ts";
import { formatSources } from "../../model/sources.ts";
import { spanOf } from "../literal.ts";
import type { Rule } from "../rule.ts";
import { draftsOfRuns } from "../runs/drafts-of-runs.ts";
import { firmwareWith, rightFirmware } from "../runs/right-firmware.ts";
import { known, sourcesOf } from "./sources.ts";

const gap = known("ps2.packet-gap");
const silence = `${gap.typical ?? 0} ${gap.unit}`;

export const packetResync: Rule = {
  id: "ps2/packet-resync",
  title: "Reports that are put together wrongly after one was cut",
  severity: "warning",
  why: "After one lost byte every report is read shifted: the pointer jumps about and buttons click by themselves until the adapter is unplugged.",
  wrong: firmwareWith(
    `  if (packet_length > 0 && is_over(packet_time, GAP_MS)) {
    bool restarted = packet_length == 2 && packet[0] == SELF_TEST_PASSED && packet[1] == MOUSE_ID;
    packet_length = 0;
    if (restarted) return false;
  }
  uint8_t value;
  while (receive(&value, 0)) {
    if (packet_length == 0 && !(value & 0x08)) continue;
`,
    `  uint8_t value;
  while (receive(&value, 0)) {
    if (value == MOUSE_ID && packet_length > 0 && packet[packet_length - 1] == SELF_TEST_PASSED) return false;
`,
  ),
  right: rightFirmware,
  source: formatSources(layouts["ps2-standard"].sources),
  *check(facts) {
    for (const { span } of facts.ps2.collectedReports) {
      yield {
        span: spanOf(span),
        message: `after a lost byte nothing finds the beginning of a report again: drop a first byte whose bit 3 is 0, or start again after a silence of ${silence}`,
        source: sourcesOf(gap),
        related: [],
        fixes: [],
      };
    }
  },
  judge: (trials) => draftsOfRuns("ps2/packet-resync", trials),
};
