// A mouse knows sixteen commands. To any other byte it answers FE (resend), and when that is sent again, FC; what the
// author wanted does not happen.
//
// The rule follows the bytes that the firmware sends along its paths, through wrappers, enumerations and tables, and
// knows which of them are arguments of the command before. A byte of which it cannot be told whether it is a command
// or an argument is left alone, and so is one whose value is not known.

import type { Facts } from "../../facts/facts.ts";
import { hexText } from "../../figures.ts";
import { type Command, commands } from "../../model/commands.ts";
import { formatSources } from "../../model/sources.ts";
import { spanOf } from "../literal.ts";
import type { Draft, Rule } from "../rule.ts";
import { byteRoles } from "./byte-roles.ts";
import { registerHost } from "./frames.ts";

const source = formatSources(commands[0]?.sources ?? []);

export const commandUnknown: Rule = {
  id: "ps2/command-unknown",
  title: "A byte that is no command of a mouse",
  severity: "error",
  why:
    "The mouse answers with FE instead of FA and does nothing. Firmware that does not look at the answer goes on as if " +
    "the command had worked; firmware that does sends it again and again.",
  wrong: {
    "main.c": registerHost(
      100,
      "int main(void) {\n  command(0xF1); /* meant: 0xF2 */\n  command(0xF4);\n  for (;;) {\n    ps2_read();\n  }\n}\n",
    ),
  },
  right: {
    "main.c": registerHost(
      100,
      "int main(void) {\n  command(0xF2);\n  command(0xF4);\n  for (;;) {\n    ps2_read();\n  }\n}\n",
    ),
  },
  source,
  *check(facts) {
    for (const sequence of facts.ps2.sequences) {
      for (const role of byteRoles(sequence)) {
        if (role.kind === "no command" && role.byte.byte !== undefined)
          yield noCommand(role.byte, role.byte.byte);
      }
    }
  },
};

function noCommand({ span, call, sender }: Parameters<typeof calledHere>[0], value: number): Draft {
  const near = nearest(value);
  const nearText =
    near.length === 0 ? "" : `; near it ${near.length === 1 ? "is" : "are"} ${near.join(" and ")}`;
  return {
    span: spanOf(span),
    message: `${hexText(value)} is no command of a PS/2 mouse${nearText}`,
    measured: { value, unit: "hex" },
    source,
    related: calledHere({ span, call, sender }),
    fixes: [],
  };
}

/** Where the byte is sent, when that is not where it is written. */
function calledHere({
  span,
  call,
  sender,
}: Pick<Facts["ps2"]["sequences"][number]["bytes"][number], "span" | "call" | "sender">): Draft["related"] {
  const inside = call.file === span.file && call.start <= span.start && call.end >= span.end;
  return inside ? [] : [{ span: spanOf(call), message: `${sender.name} sends it here` }];
}

/** A code further away than this was hardly meant. */
const mostAway = 2;

/** The commands with the codes next below and next above, where these are near. */
function nearest(value: number): string[] {
  const below = commands.find(({ code }) => code < value && value - code <= mostAway);
  const above = commands.findLast(({ code }) => code > value && code - value <= mostAway);
  return [below, above]
    .filter((each): each is Command => each !== undefined)
    .map(({ code, name }) => `${hexText(code)} (${name})`);
}
