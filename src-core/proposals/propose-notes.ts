import type { Facts } from "../facts/facts.ts";
import type { Span } from "../finding.ts";
import type { EncoderProposal, NoteProposal, ProposedNotes } from "../note-proposal.ts";
import type { Program } from "../reader/program/program.ts";
import { constantNotes } from "./constant-notes.ts";
import { ps2Words, serialWords, type ToldWord } from "./wire-notes.ts";

/** Notes that would say what the code shows and nobody has said; `encoders` are those that were found by running. */
export function proposeNotes(facts: Facts, encoders: readonly EncoderProposal[]): ProposedNotes {
  const { wires, ps2 } = facts;
  const proposals = [
    ...encoders,
    ...constantNotes(facts),
    ...projectNotes(facts, "ps2", ps2Words(ps2, wires)),
    ...projectNotes(facts, "serial", serialWords(facts, wires, encoders)),
  ];
  return { proposals, untold: untold(facts) };
}

/** One note for all words of a directive, at the top of the first file. */
function projectNotes(
  { program }: Facts,
  directive: string,
  words: readonly ToldWord[],
): readonly NoteProposal[] {
  const file = firstFile(program);
  const [first] = words;
  if (file === undefined || first === undefined) return [];
  const note = `@wire ${directive} ${words.map(({ word }) => word).join(" ")}`;
  const reason = [...new Set(words.map((each) => each.reason))].join("; ");
  const before: Span = { file, start: 0, end: 0 };
  return [{ span: first.span, reason, note, before }];
}

/** The file that the firmware starts in; else the first. A sketch is read from its first file on, wherever `setup` stands. */
function firstFile({ units, functions }: Program): string | undefined {
  const main = functions.find(({ name, memberOf }) => name === "main" && memberOf === undefined)?.at.first
    .file;
  return main ?? units[0]?.mains[0];
}

/** What no code tells, and the bench needs. */
function untold({ board, wires, ps2, serial }: Facts): readonly string[] {
  const said = wires.serial;
  const missing: string[] = [];
  if (board.chip === undefined) missing.push("the chip, as in `@wire board atmega328p`");
  if (board.clock === undefined) missing.push("its clock, as in `@wire board clock=16MHz`");
  if (ps2.clock === undefined || ps2.data === undefined)
    missing.push("the pins of the mouse, as in `@wire ps2 clock=2 data=3`");
  const hasSerial = serial.setUps.length > 0 || serial.bitBanged.length > 0;
  if (!hasSerial && said.uart === undefined && said.tx === undefined)
    missing.push("what sends to the PC, as in `@wire serial uart=0`");
  if (said.rts === undefined && said.dtr === undefined)
    missing.push("the pin that reads the PC's control line, as in `@wire serial rts=4`");
  if (said.shifter === undefined)
    missing.push("whether a level shifter turns the lines over, as in `@wire serial shifter=inverting`");
  return missing;
}
