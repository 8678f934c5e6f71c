// After power-on, reset (FF) and "set defaults" (F6) a mouse does not report: it waits for F4, or to be asked with EB.
// Firmware that sets the mouse up and forgets F4 gets every acknowledge and never a movement.
//
// The rule is for firmware that sends the mouse at least one command. It is silent where some path sends F4 or EB, and
// where a byte is sent that is not known, or other functions of a library are called, which may be either. Firmware that only listens is left alone, and so is
// firmware that does nothing but ask for a resend.

import type { Ps2Facts, SentByte } from "../../facts/ps2/ps2-facts.ts";
import { hexText } from "../../figures.ts";
import { commands } from "../../model/commands.ts";
import { mouseDefaults } from "../../model/mouse-settings.ts";
import { formatSources } from "../../model/sources.ts";
import { spanOf } from "../literal.ts";
import type { Rule } from "../rule.ts";
import { draftsOfRuns } from "../runs/drafts-of-runs.ts";
import { byteRoles } from "./byte-roles.ts";
import { registerHost } from "./frames.ts";

const source = formatSources(mouseDefaults.sources);
const enable = commands.find(({ name }) => name === "enable reporting");
const poll = commands.find(({ name }) => name === "read data");
const resend = commands.find(({ name }) => name === "resend");

const setUp = (last: string): string =>
  registerHost(
    100,
    `int main(void) {\n  command(0xF3);\n  command(40);\n${last}  for (;;) {\n    ps2_read();\n  }\n}\n`,
  );

export const reportingNotEnabled: Rule = {
  id: "ps2/reporting-not-enabled",
  title: "The mouse is set up, but never told to report",
  severity: "error",
  why:
    "Every command is acknowledged and the mouse still never sends a movement: reporting is off until F4 is sent. With a " +
    "mouse that another host has enabled before, it seems to work.",
  wrong: { "main.c": setUp("") },
  right: { "main.c": setUp("  command(0xF4);\n") },
  source,
  *check({ ps2 }) {
    if (ps2.maySendMore) return;
    const last = lastCommand(ps2);
    if (last === undefined || enable === undefined || poll === undefined) return;
    yield {
      span: spanOf(last.call),
      message: `the mouse is set up but never told to report; send ${hexText(enable.code)} (${enable.name}) last, or ask for each report with ${hexText(poll.code)} (${poll.name})`,
      source,
      related: [],
      fixes: [],
    };
  },
  judge: (trials) => draftsOfRuns("ps2/reporting-not-enabled", trials),
};

/** The last byte of the longest path, where no path enables reporting or polls and every byte is known. */
function lastCommand({ sequences }: Ps2Facts): SentByte | undefined {
  let longest: readonly SentByte[] = [];
  let commanded = false;
  for (const sequence of sequences) {
    for (const role of byteRoles(sequence)) {
      if (role.byte.byte === undefined) {
        if (role.kind === "uncertain") return undefined;
        continue;
      }
      if (role.kind !== "command") continue;
      if (role.command === enable || role.command === poll) return undefined;
      if (role.command !== resend) commanded = true;
    }
    if (sequence.bytes.length > longest.length) longest = sequence.bytes;
  }
  return commanded ? longest.at(-1) : undefined;
}
