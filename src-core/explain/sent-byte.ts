import type { SendSequence, SentByte } from "../facts/ps2/ps2-facts.ts";
import { type Command, commandByCode, commands } from "../model/commands.ts";
import { type Knock, knocks } from "../model/knocks.ts";
import { resolutions } from "../model/mouse-settings.ts";
import { quantity } from "../model/quantities.ts";
import { acknowledge, selfTestPassed } from "../model/replies.ts";
import { formatSources } from "../model/sources.ts";
import { requirement, sourceOf } from "./bounds.ts";
import { hexByte } from "./bytes.ts";
import { type Explanation, explanation, holds } from "./explanation.ts";
import type { Place } from "./place.ts";

/** A byte that goes to the mouse: a command, or the argument of the command before it. */
export function explainSentByte({ facts, file, offset }: Place): Explanation | undefined {
  for (const sequence of facts.ps2.sequences) {
    for (const [index, sent] of sequence.bytes.entries()) {
      if (sent.byte === undefined || !holds(sent.span, file, offset)) continue;
      const command = argumentOf(sequence, index);
      return command === undefined
        ? ofCommand(sequence, index, sent)
        : ofArgument(sequence, index, sent, command);
    }
  }
  return undefined;
}

/** The command whose argument the byte is. */
function argumentOf({ bytes }: SendSequence, index: number): Command | undefined {
  const before = bytes[index - 1];
  if (before?.byte === undefined || bytes[index]?.afterUnknown === true) return undefined;
  const isArgument = argumentOf({ from: "alone", bytes }, index - 1) !== undefined;
  const command = isArgument ? undefined : commandByCode(before.byte);
  return command === undefined || command.argument === "none" ? undefined : command;
}

function ofCommand(sequence: SendSequence, index: number, { byte, span }: SentByte): Explanation | undefined {
  const command = byte === undefined ? undefined : commandByCode(byte);
  if (byte === undefined) return undefined;
  if (command === undefined) {
    const codes = commands.map(({ code }) => hexByte(code)).join(", ");
    return explanation(span, `${hexByte(byte)}: no command that a PS/2 mouse knows`, [
      `There are ${commands.length}: ${codes}.`,
      `Source: ${formatSources(commands[0]?.sources ?? [])}.`,
    ]);
  }
  return explanation(span, `${hexByte(byte)}: ${command.name}`, [
    command.meaning,
    `The mouse answers: ${command.replies.map((part) => replyWords[part]).join(", ")}.`,
    knockLine(sequence, index),
    `Source: ${formatSources(command.sources)}.`,
  ]);
}

const replyWords: Readonly<Record<Command["replies"][number], string>> = {
  acknowledge: `${acknowledge.name} (${hexByte(acknowledge.code)})`,
  "self-test-passed": `${selfTestPassed.name} (${hexByte(selfTestPassed.code)})`,
  id: "its id",
  "movement-report": "a movement report",
  "status-packet": "three status bytes",
  "last-packet": "its last packet again",
};

function ofArgument(
  sequence: SendSequence,
  index: number,
  { byte, span }: SentByte,
  command: Command,
): Explanation | undefined {
  if (byte === undefined) return undefined;
  const known = quantity(command.argument === "sample-rate" ? "ps2.sample-rate" : "ps2.resolution");
  if (known === undefined) return undefined;
  return explanation(
    span,
    `${meaningOf(byte, command)} (argument of ${hexByte(command.code)}, ${command.name})`,
    [requirement(known, byte), knockLine(sequence, index), sourceOf(known)],
  );
}

function meaningOf(byte: number, { argument }: Command): string {
  if (argument === "sample-rate") return `${byte}: ${byte} reports per second`;
  const resolution = resolutions.find(({ code }) => code === byte);
  return resolution === undefined
    ? `${byte}: no resolution`
    : `${byte}: ${resolution.countsPerMm} counts per millimetre`;
}

const setSampleRate = commands.find(({ argument }) => argument === "sample-rate")?.code;

/** Three sample rates in a row that unlock something, if this byte is one of their six. */
function knockLine({ bytes }: SendSequence, index: number): string | undefined {
  for (const knock of knocks) {
    const wanted = knock.rates.flatMap((rate) => [setSampleRate, rate]);
    for (let from = Math.max(0, index - wanted.length + 1); from <= index; from++) {
      if (wanted.every((byte, at) => bytes[from + at]?.byte === byte)) return knockText(knock);
    }
  }
  return undefined;
}

function knockText({ rates, meaning, id, sources }: Knock): string {
  return (
    `Part of the sequence ${rates.join(", ")}: it ${meaning}. ` +
    `A mouse that can do this then gives id ${id}. Source: ${formatSources(sources)}.`
  );
}
