// Before it sends, the host holds the clock low so that the mouse stops and listens; only then it pulls data low and
// lets the clock go. A mouse looks at the line now and then: a hold that is too short is missed by some mice, and the
// command with it.
//
// The rule adds up the delays between pulling the clock low and letting it go, however they are made: constant
// delays, delays in counted loops, loops on micros(). Where something in between takes a time that is not known, the
// hold is not judged; that is said once.

import type { Facts } from "../../facts/facts.ts";
import type { HoldPart, RequestHold } from "../../facts/ps2/ps2-facts.ts";
import { timeText } from "../../figures.ts";
import type { Fix } from "../../finding.ts";
import { literalToken, replaced, spanOf } from "../literal.ts";
import type { Draft, Rule } from "../rule.ts";
import { draftsOfRuns } from "../runs/drafts-of-runs.ts";
import { constantTooLow } from "./constants.ts";
import { registerHost } from "./frames.ts";
import { pinPlaces } from "./pin-places.ts";
import { known, sourcesOf } from "./sources.ts";

const hold = known("ps2.request-hold");
const inhibit = known("ps2.inhibit-hold");
const least = hold.min ?? 0;

export const requestHoldShort: Rule = {
  id: "ps2/request-hold-short",
  title: "The clock is held too short before a byte is sent",
  severity: "error",
  why:
    "A mouse that misses the hold does not take the command: it stays in its power-on state, or the adapter waits for " +
    "an answer that never comes. Mice differ, so it works with the one on the desk and fails with the next.",
  wrong: {
    "main.c": registerHost(52, "int main(void) {\n  command(0xF4);\n  for (;;) {\n    ps2_read();\n  }\n}\n"),
  },
  right: {
    "main.c": registerHost(
      100,
      "int main(void) {\n  command(0xF4);\n  for (;;) {\n    ps2_read();\n  }\n}\n",
    ),
  },
  source: sourcesOf(hold),
  *check(facts) {
    for (const each of facts.ps2.holds) {
      if (each.unknown !== undefined || each.us >= least) continue;
      yield shortHold(facts, each);
    }
    const judged = facts.ps2.holds.flatMap(({ parts }) =>
      parts.flatMap(({ expression }) => expression ?? []),
    );
    yield* constantTooLow(facts, hold, judged, "the clock has to be held low for");
    yield* constantTooLow(facts, inhibit, [], "to keep the mouse quiet the clock has to be held low for");
  },
  judge: (trials) => draftsOfRuns("ps2/request-hold-short", trials),
};

function shortHold(facts: Facts, { us, parts, low, release }: RequestHold): Draft {
  const longest = parts.reduce<HoldPart | undefined>(
    (most, part) => (most !== undefined && total(most) >= total(part) ? most : part),
    undefined,
  );
  const held =
    longest === undefined
      ? "the clock is let go without a delay after it was pulled low for the request to send"
      : `the clock is held low for ${timeText(us)} before the request to send`;
  return {
    span: spanOf(longest?.span ?? low),
    message: `${held}; the mouse may need ${timeText(least)}`,
    measured: { value: us, unit: "us" },
    limit: { atLeast: least, unit: "us" },
    source: sourcesOf(hold),
    related: [
      ...(longest === undefined ? [] : [{ span: spanOf(low), message: "the clock is pulled low here" }]),
      { span: spanOf(release), message: "and let go here" },
      ...pinPlaces(facts, ["clock"]),
    ],
    fixes: longest === undefined ? [] : lengthened(longest, us),
  };
}

function total({ us, times }: HoldPart): number {
  return (us ?? 0) * times;
}

/** The delay's own number, so that the whole hold reaches the limit. */
function lengthened(part: HoldPart, us: number): readonly Fix[] {
  const token = part.expression && literalToken(part.expression);
  if (token === undefined || part.unitUs === undefined) return [];
  const missing = least - (us - total(part));
  const value = Math.ceil(missing / (part.unitUs * part.times));
  return [{ title: `Hold the clock for ${timeText(least)}`, edits: [replaced(token, String(value))] }];
}
