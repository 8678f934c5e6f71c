import type { Facts } from "../facts/facts.ts";
import type { Ps2Facts, Ps2Pin } from "../facts/ps2/ps2-facts.ts";
import type { SetUp } from "../facts/serial/serial-facts.ts";
import type { Span } from "../finding.ts";
import { layoutNamed } from "../model/report-layouts.ts";
import type { EncoderProposal } from "../note-proposal.ts";
import type { Wires } from "../notes/wires.ts";

/** One word of a note about the whole project, and the place in the code that tells it. */
export interface ToldWord {
  /** `clock=PD2`. */
  readonly word: string;
  readonly reason: string;
  readonly span: Span;
}

/** What the code tells of the PS/2 port and nobody has said yet. */
export function ps2Words({ clock, data, pullUps }: Ps2Facts, { ps2 }: Wires): readonly ToldWord[] {
  const words: ToldWord[] = [];
  if (clock !== undefined && clock.by !== "said") words.push(pinWord("clock", clock));
  if (data !== undefined && data.by !== "said") words.push(pinWord("data", data));
  const span = clock?.span ?? data?.span;
  if (ps2.pullups === undefined && pullUps.clock.enabled && pullUps.data.enabled && span !== undefined)
    words.push({ word: "pullups=internal", reason: "the chip's own pull-ups are switched on", span });
  return words;
}

function pinWord(line: "clock" | "data", { pin, by, span }: Ps2Pin): ToldWord {
  const how = by === "interrupt" ? "the interrupt that reads the data line" : "the request to send";
  return { word: `${line}=${pin}`, reason: `${how} shows the pins`, span };
}

/**
 * What the code tells of the serial side and nobody has said yet. The rate and the line format are not among it: what
 * is set may be wrong, and a note that repeats it would hide that.
 */
export function serialWords(
  { serial, notes }: Facts,
  { serial: said }: Wires,
  encoders: readonly EncoderProposal[],
): readonly ToldWord[] {
  const words: ToldWord[] = [];
  if (said.uart === undefined && said.tx === undefined) {
    const uart = uartWord(serial.mouseSetUps) ?? bitBangedWord(serial.bitBanged);
    if (uart !== undefined) words.push(uart);
  }
  const report = said.report === undefined ? reportWord(notes, encoders) : undefined;
  return report === undefined ? words : [...words, report];
}

function uartWord(setUps: readonly SetUp[]): ToldWord | undefined {
  for (const { port, span } of setUps)
    if (port.kind === "uart")
      return { word: `uart=${port.uart}`, reason: `UART ${port.uart} is set up`, span };
  return undefined;
}

function bitBangedWord(bytes: Facts["serial"]["bitBanged"]): ToldWord | undefined {
  const [first] = bytes;
  const span = first?.bits[0]?.span;
  if (first === undefined || span === undefined || bytes.some(({ pin }) => pin !== first.pin))
    return undefined;
  return { word: `tx=${first.pin}`, reason: `bytes are sent bit by bit at ${first.pin}`, span };
}

/** The one serial layout that encoders make. */
function reportWord(
  { attached }: Facts["notes"],
  encoders: readonly EncoderProposal[],
): ToldWord | undefined {
  const made = [
    ...attached.flatMap(({ note }) =>
      note.kind === "encodes" ? [{ layout: note.layout.value, span: note.span }] : [],
    ),
    ...encoders,
  ].filter(({ layout }) => layoutNamed(layout)?.side === "serial");
  const [first] = made;
  if (first === undefined || made.some(({ layout }) => layout !== first.layout)) return undefined;
  return { word: `report=${first.layout}`, reason: `${first.layout} reports are built`, span: first.span };
}
