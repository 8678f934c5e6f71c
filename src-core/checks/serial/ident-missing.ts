// A PC finds a serial mouse by turning RTS on and waiting for M. A mouse that says nothing is not there; only mice with the
// five-byte layout may stay silent.
//
// The rule reports a firmware that sends bytes to the PC, of which M is none, and in whose text no constant and no text is
// or has an M that might be sent by a way that is not seen. Where a library, a pointer or assembly may send as well, nothing
// is said; a run shows what comes in time.

import type { Facts } from "../../facts/facts.ts";
import { bytesText } from "../../figures.ts";
import type { Span } from "../../finding.ts";
import { quantity } from "../../model/quantities.ts";
import { formatSources } from "../../model/sources.ts";
import { spanOf } from "../literal.ts";
import type { Rule } from "../rule.ts";
import { draftsOfRuns } from "../runs/drafts-of-runs.ts";
import { firmwareWith, rightFirmware } from "../runs/right-firmware.ts";

export const identMissing: Rule = {
  id: "serial/ident-missing",
  title: "A PC that asks for the mouse and gets no answer",
  severity: "error",
  why: "The PC's driver says that there is no mouse, and does not load.",
  wrong: firmwareWith("    UDR0 = 'M';\n    return;", "    return;"),
  right: rightFirmware,
  source: formatSources(quantity("serial.ident-delay")?.sources ?? []),
  *check(facts) {
    const identification = facts.serial.identification;
    const { sent } = facts.serial;
    const span = placeOf(facts);
    if (identification === undefined || sent === undefined || span === undefined) return;
    const { answers, mayBeSentUnseen, usual, said, sources } = identification;
    if (answers.length > 0 || mayBeSentUnseen || sent.mayBeMore || !sent.hasProgram) return;
    yield {
      span,
      message: `a PC that turns RTS on waits for ${bytesText(usual)}, and nothing here ever sends it: send it each time RTS comes on`,
      source: formatSources(sources),
      related: [{ span: spanOf(said.span), message: `${said.value} mice say who they are` }],
      fixes: [],
    };
  },
  judge: (trials) => draftsOfRuns("serial/ident-missing", trials),
};

/** Where the port is set up, or else where a byte is sent. */
function placeOf({ serial }: Facts): Span | undefined {
  const span =
    serial.mouseSetUps[0]?.span ?? serial.bitBanged[0]?.bits[0]?.span ?? serial.sent?.others[0]?.span;
  return span && spanOf(span);
}
