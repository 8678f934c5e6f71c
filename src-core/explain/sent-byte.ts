import type { SendSequence } from "../facts/ps2/ps2-facts.ts";
import { hexText } from "../figures.ts";
import type { Span } from "../finding.ts";
import { type Command, commandByCode, commands } from "../model/commands.ts";
import { resolutions } from "../model/mouse-settings.ts";
import { quantity } from "../model/quantities.ts";
import { formatSources } from "../model/sources.ts";
import { requirement, sourceOf } from "./bounds.ts";
import { type Explanation, explanation, holds } from "./explanation.ts";
import { knockLine } from "./knock.ts";
import type { Place } from "./place.ts";
import { replyWords } from "./reply-words.ts";

/** A byte that goes to the mouse: a command, or the argument of the command before it. */
export function explainSentByte(place: Place): Explanation | undefined {
  for (const sequence of place.facts.ps2.sequences) {
    const index = sequence.bytes.findIndex(
      ({ byte, span }) => byte !== undefined && holds(span, place.file, place.offset),
    );
    const sent = sequence.bytes[index];
    if (sent?.byte === undefined) continue;
    const command = commandBefore(sequence, index);
    return command === undefined
      ? ofCommand(place, sent.byte, sent.span)
      : ofArgument(place, sent.byte, sent.span, command);
  }
  return undefined;
}

/** What a byte of a sequence says, in a few words: `set sample rate`, `100 reports per second`; undefined for no known byte. */
export function sentInWords(sequence: SendSequence, index: number): string | undefined {
  const byte = sequence.bytes[index]?.byte;
  if (byte === undefined) return undefined;
  const command = commandBefore(sequence, index);
  return command === undefined ? commandByCode(byte)?.name : meaningOf(byte, command);
}

/** The command whose argument the byte is. */
function commandBefore({ bytes }: SendSequence, index: number): Command | undefined {
  let waiting: Command | undefined;
  for (const [at, { byte, afterUnknown }] of bytes.entries()) {
    if (afterUnknown) waiting = undefined;
    if (at === index) return waiting;
    const command = waiting === undefined && byte !== undefined ? commandByCode(byte) : undefined;
    waiting = command?.argument === "none" ? undefined : command;
  }
  return undefined;
}

function ofCommand(place: Place, byte: number, span: Span): Explanation {
  const command = commandByCode(byte);
  if (command === undefined) {
    const codes = commands.map(({ code }) => hexText(code)).join(", ");
    return explanation(span, `${hexText(byte)}: no command that a PS/2 mouse knows`, [
      `There are ${commands.length}: ${codes}.`,
      `Source: ${formatSources(commands[0]?.sources ?? [])}.`,
    ]);
  }
  return explanation(span, `${hexText(byte)}: ${command.name}`, [
    command.meaning,
    `The mouse answers: ${command.replies.map((part) => replyWords[part]).join(", ")}.`,
    knockLine(place.facts, span),
    `Source: ${formatSources(command.sources)}.`,
  ]);
}

function ofArgument(place: Place, byte: number, span: Span, command: Command): Explanation | undefined {
  const known = quantity(command.argument === "sample-rate" ? "ps2.sample-rate" : "ps2.resolution");
  if (known === undefined) return undefined;
  return explanation(
    span,
    `${byte}: ${meaningOf(byte, command)} (argument of ${hexText(command.code)}, ${command.name})`,
    [requirement(known, byte), knockLine(place.facts, span), sourceOf(known)],
  );
}

function meaningOf(byte: number, { argument }: Command): string {
  if (argument === "sample-rate") return `${byte} reports per second`;
  const resolution = resolutions.find(({ code }) => code === byte);
  return resolution === undefined ? "no resolution" : `${resolution.countsPerMm} counts per millimetre`;
}
