import type { Ps2Words } from "../../notes/wires.ts";
import type { Program } from "../../reader/program/program.ts";
import type { NotKnown, Ps2Facts } from "./ps2-facts.ts";

/**
 * What would have been needed and is not known; nothing for firmware that has no sign of a PS/2 port, and each
 * thing once.
 */
export function findNotKnown(
  facts: Omit<Ps2Facts, "notKnown">,
  words: Ps2Words,
  program: Program,
): readonly NotKnown[] {
  const found: NotKnown[] = [];
  for (const line of ["clock", "data"] as const) {
    const said = words[line];
    if (said !== undefined && facts[line] === undefined) {
      const why = program.chip === undefined ? "the chip is not known" : `the chip has no pin ${said.value}`;
      found.push({
        span: said.span,
        message: `which pin is the PS/2 ${line} is not known, because ${why}: the ${line} line is not checked`,
      });
    }
  }
  const isSaid = words.clock !== undefined || words.data !== undefined;
  const talks = facts.senders.length > 0;
  if (!isSaid && talks && (facts.clock === undefined || facts.data === undefined)) {
    found.push({
      span: undefined,
      message:
        "the pins of the PS/2 port are not known: the levels and holds on them are not checked; say them in a note: @wire ps2 clock=2 data=3",
    });
  }
  for (const hold of facts.holds) {
    if (hold.unknown === undefined || found.some(({ span }) => span === hold.unknown)) continue;
    found.push({
      span: hold.unknown,
      message: "how long this takes is not known, so the hold of the clock around it is not checked",
    });
  }
  return found;
}
