// The PC waits 200 ms for the first character of a mouse that it has turned RTS on for, and as long from one character to the
// next. Mice take about 14 ms, and 63 ms more to a second character.
//
// The rule adds up the delays that are sure to lie between a look at RTS, or its interrupt, and the first byte of the
// identification, and those between its bytes: calls of the delay functions with known lengths, in loops and in functions of
// the firmware's own. What else takes time is left out, so that no wait is told too long; a run measures all of it.

import { codesOf } from "../../facts/serial/identification.ts";
import type { RunByte, Wait } from "../../facts/serial/serial-facts.ts";
import { timeText } from "../../figures.ts";
import type { Fix } from "../../finding.ts";
import { type Quantity, quantity } from "../../model/quantities.ts";
import { formatSources } from "../../model/sources.ts";
import { literalToken, replaced, spanOf } from "../literal.ts";
import type { Draft, Rule } from "../rule.ts";
import { draftsOfRuns } from "../runs/drafts-of-runs.ts";
import { firmwareWith, rightFirmware } from "../runs/right-firmware.ts";

const MS = 1000;

export const identLate: Rule = {
  id: "serial/ident-late",
  title: "An identification that comes too late",
  severity: "error",
  why: "A patient driver finds the mouse, a hurried one does not: the adapter works with one program and not with the next.",
  wrong: firmwareWith("    UDR0 = 'M';\n", "    _delay_ms(300);\n    UDR0 = 'M';\n"),
  right: rightFirmware,
  source: formatSources(quantity("serial.ident-delay")?.sources ?? []),
  *check(facts) {
    const identification = facts.serial.identification;
    if (identification === undefined) return;
    const { answers, layout, usual } = identification;
    for (const run of answers) {
      const { asked, bytes } = run;
      const codes = codesOf(run, layout);
      if (codes[0] !== usual[0]) continue;
      // What is sent when RTS goes off is timed from there.
      if (asked !== undefined && asked.state !== "off") {
        yield* late(bytes[0], "serial.ident-delay", "the identification begins no sooner than", "after RTS");
      }
      for (const [index, byte] of bytes.slice(1, usual.length).entries()) {
        if (codes[index + 1] !== usual[index + 1]) break;
        yield* late(byte, "serial.ident-character-gap", "this character comes", "after the one before it");
      }
    }
  },
  judge: (trials) => draftsOfRuns("serial/ident-late", trials),
};

function* late(byte: RunByte | undefined, id: string, what: string, since: string): Generator<Draft> {
  const limit = quantity(id);
  if (byte === undefined || limit?.max === undefined) return;
  const us = byte.waits.reduce((sum, wait) => sum + wait.us, 0);
  const [longest] = [...byte.waits].sort((a, b) => b.us - a.us);
  if (longest === undefined || us <= limit.max * MS) return;
  yield {
    span: spanOf(longest.span),
    message: `${what} ${timeText(us)} ${since}; the PC waits ${timeText(limit.max * MS)}`,
    measured: { value: us / MS, unit: "ms" },
    limit: { atMost: limit.max, unit: "ms" },
    source: formatSources(limit.sources),
    related: byte.waits
      .filter((wait) => wait !== longest)
      .map((wait) => ({ span: spanOf(wait.span), message: `waits ${timeText(wait.us)} more` })),
    fixes: fixFor(longest, us, limit),
  };
}

/** What mice do, as far as the other delays leave room for it. */
function fixFor(wait: Wait, us: number, { typical, max }: Quantity): readonly Fix[] {
  const token = wait.expression && literalToken(wait.expression);
  if (token === undefined || typical === undefined || max === undefined) return [];
  const written = Number(token.text.replace(/[uUlLfF.]+$/, ""));
  const rest = us - wait.us;
  const times = wait.us / wait.each;
  const unit = wait.each / written;
  const wanted = Math.floor(Math.max(0, Math.min(typical * MS, max * MS - rest)) / times / unit);
  if (!Number.isFinite(wanted) || written <= 0 || rest > max * MS) return [];
  return [{ title: `Wait ${timeText(wanted * unit * times)}`, edits: [replaced(token, String(wanted))] }];
}
