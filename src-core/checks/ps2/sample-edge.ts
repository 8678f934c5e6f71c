// The mouse makes the clock, in both directions. What it sends is valid at the falling edge and while the clock is low; what
// it is sent it reads after the rising edge, so the host changes data while the clock is low. At the other edge the data
// line may be on its way to the next bit.
//
// The rule looks at the edge that the clock's handler runs at, at handlers of both edges that take bits while the clock
// is high, and at loops of eight to eleven turns that wait for the rising edge before they read or change data.

import type { Facts } from "../../facts/facts.ts";
import type { EdgeSetting, WrongEdge } from "../../facts/ps2/ps2-facts.ts";
import type { Fix } from "../../finding.ts";
import { formatSources } from "../../model/sources.ts";
import { replaced, spanOf } from "../literal.ts";
import type { Draft, Rule } from "../rule.ts";
import { draftsOfRuns } from "../runs/drafts-of-runs.ts";
import { firmwareWith, rightFirmware } from "../runs/right-firmware.ts";
import { pinPlaces } from "./pin-places.ts";

const source = formatSources([
  { document: "ps2ProtocolArticle", place: "Device-to-Host, Host-to-Device" },
  { document: "touchpadGuide", place: "3.2.2" },
]);

export const sampleEdge: Rule = {
  id: "ps2/sample-edge",
  title: "A bit read or written while it changes",
  severity: "error",
  why:
    "At the rising edge the line may still carry this bit or already the next one. With one mouse all bytes are right, " +
    "with a quicker one some bits are shifted, and the pointer jumps.",
  wrong: firmwareWith("  EICRA = _BV(ISC01);\n", "  EICRA = _BV(ISC01) | _BV(ISC00);\n"),
  right: rightFirmware,
  source,
  *check(facts) {
    for (const each of facts.ps2.wrongEdges) yield draftOf(facts, each);
  },
  judge: (trials) => draftsOfRuns("ps2/sample-edge", trials),
};

function draftOf(facts: Facts, wrong: WrongEdge): Draft {
  return {
    span: spanOf(wrong.span),
    message: messageOf(wrong),
    source,
    related: pinPlaces(facts, ["clock", "data"]),
    fixes: wrong.kind === "handler" ? onFallingEdge(facts, wrong.set, wrong) : [],
  };
}

function messageOf(wrong: WrongEdge): string {
  switch (wrong.kind) {
    case "handler":
      return wrong.edge === "rising"
        ? "the handler runs when the clock rises; data is to be read at the falling edge"
        : "the handler runs at both edges of the clock and does not look which; data is to be read at the falling edge";
    case "high":
      return "data is read while the clock is high; it is to be read at the falling edge";
    case "polled":
      return wrong.what === "read"
        ? "data is read after the clock rose; it is to be read at the falling edge"
        : "data is changed after the clock rose, when the mouse reads it; it is to be changed while the clock is low";
  }
}

function onFallingEdge(facts: Facts, set: EdgeSetting, { span }: WrongEdge): readonly Fix[] {
  const title = "Run the handler at the falling edge";
  if (set.kind === "mode") return [{ title, edits: [replaced(span, "FALLING")] }];
  if (set.kind !== "register") return [];
  const { write, mask, falling } = set;
  const bit = nameOfBit(facts, write.register.name, falling);
  const setsTheseAlone = write.ones === mask || (write.ones & ~mask) === 0;
  if (bit === undefined || !setsTheseAlone || (write.operator !== "=" && write.operator !== "|=")) return [];
  return [{ title, edits: [replaced(span, `(1 << ${bit})`)] }];
}

function nameOfBit(facts: Facts, register: string, mask: number): string | undefined {
  const { chip } = facts.program;
  if (chip?.kind !== "avr") return undefined;
  const bits = chip.registers.find(({ name }) => name === register)?.bits;
  return bits?.find(({ bit }) => 1 << bit === mask)?.name;
}
