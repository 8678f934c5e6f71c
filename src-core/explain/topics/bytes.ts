import { hexText } from "../../figures.ts";
import { type Command, type CommandArgument, commands } from "../../model/commands.ts";
import { identificationOf } from "../../model/identification.ts";
import { knocks } from "../../model/knocks.ts";
import { resolutions, sampleRates } from "../../model/mouse-settings.ts";
import { quantity } from "../../model/quantities.ts";
import { deviceIds, replies } from "../../model/replies.ts";
import { reportLayouts } from "../../model/report-layouts.ts";
import { requirement, sourceOf } from "../bounds.ts";
import { replyWords } from "../reply-words.ts";
import { citation } from "./citation.ts";
import { type Entry, texts } from "./topic.ts";

/** Everything that a byte on either wire can mean: one topic for each meaning. */
export function byteEntries(): readonly Entry[] {
  return [
    ...commands.map(commandEntry),
    ...replies.map(
      ({ code, name, meaning, sources, confidence }): Entry => ({
        words: [...spellings(code), name],
        topic: () => ({
          name: hexText(code),
          kind: "reply of the mouse",
          title: name,
          parts: texts(meaning, citation(sources, confidence)),
          related: ["ps2.reply-timeout", "ps2/ack-ignored"],
        }),
      }),
    ),
    ...deviceIds.map(
      ({ code, layout, meaning, sources }): Entry => ({
        words: [...spellings(code), "device id"],
        topic: () => ({
          name: hexText(code),
          kind: "id of a mouse",
          title: meaning,
          parts: texts(
            'The mouse sends its id after the self-test and when it is asked with "get device id" (F2).',
            citation(sources),
          ),
          related: [layout, hexText(0xf2)],
        }),
      }),
    ),
    ...sampleRates.map((rate) => argumentEntry(rate, "sample-rate", `${rate} reports per second`)),
    ...resolutions.map(({ code, countsPerMm }) =>
      argumentEntry(code, "resolution", `${countsPerMm} count${countsPerMm === 1 ? "" : "s"} per millimetre`),
    ),
    ...identificationEntries(),
    ...knocks.map(
      ({ name, rates, meaning, id, sources }): Entry => ({
        words: [rates.join(","), rates.join(" "), rates.join(", ")],
        topic: () => ({
          name: rates.join(" "),
          kind: "sequence of sample rates",
          title: `unlocks ${name === "wheel" ? "the wheel" : "five buttons"}`,
          parts: texts(
            `Three "set sample rate" commands in a row with ${rates.join(", ")}: the sequence ${meaning}.`,
            `A mouse that can do this then answers ${hexText(id)} to "get device id"; any other answers ${hexText(0)}.`,
            citation(sources),
          ),
          related: ["0xF3", "0xF2", hexText(id), "ps2/wheel-sequence"],
        }),
      }),
    ),
  ];
}

function commandEntry({
  code,
  name,
  argument,
  replies: parts,
  meaning,
  sources,
  confidence,
}: Command): Entry {
  return {
    words: [...spellings(code), name],
    topic: () => ({
      name: hexText(code),
      kind: "command to the mouse",
      title: name,
      parts: texts(
        meaning,
        argumentText(argument),
        `The mouse answers: ${parts.map((part) => replyWords[part]).join(", ")}.`,
        citation(sources, confidence),
      ),
      related: [...argumentTopics(argument), "ps2.reply-timeout", "ps2/command-unknown"],
    }),
  };
}

const argumentQuantity: Readonly<Record<CommandArgument, string | undefined>> = {
  none: undefined,
  "sample-rate": "ps2.sample-rate",
  resolution: "ps2.resolution",
};

function argumentText(argument: CommandArgument): string | undefined {
  const known = quantity(argumentQuantity[argument] ?? "");
  return known === undefined ? undefined : `Argument: ${known.title}. ${requirement(known)}`;
}

function argumentTopics(argument: CommandArgument): readonly string[] {
  const id = argumentQuantity[argument];
  return id === undefined ? [] : [id, "ps2/argument-range"];
}

function argumentEntry(value: number, argument: CommandArgument, title: string): Entry {
  const command = commands.find((each) => each.argument === argument);
  const known = quantity(argumentQuantity[argument] ?? "");
  return {
    words: [...spellings(value), String(value)],
    topic: () => ({
      name: hexText(value),
      kind: `argument of ${command === undefined ? "a command" : `${hexText(command.code)}, ${command.name}`}`,
      title,
      parts: texts(known && requirement(known), known && sourceOf(known)),
      related: [...(command === undefined ? [] : [hexText(command.code)]), ...argumentTopics(argument)],
    }),
  };
}

/** First bytes that a serial mouse sends when RTS comes on, and the layouts that they announce. */
function identificationEntries(): readonly Entry[] {
  const firsts = new Map<number, string[]>();
  for (const { name } of reportLayouts) {
    for (const [first] of identificationOf(name)?.sequences ?? []) {
      if (first !== undefined) firsts.set(first, [...(firsts.get(first) ?? []), name]);
    }
  }
  return [...firsts].map(([byte, names]) => ({
    words: [...spellings(byte), String.fromCharCode(byte)],
    topic: () => ({
      name: hexText(byte),
      kind: "identification of a serial mouse",
      title: `${String.fromCharCode(byte)}, sent when RTS comes on`,
      parts: texts(
        `First byte of the identification with the layout${names.length === 1 ? "" : "s"} ${names.map((name) => `\`${name}\``).join(", ")}.`,
        citation(names.flatMap((name) => layoutSources(name))),
      ),
      related: [...names, "serial.ident-delay", "serial/ident-missing", "serial/ident-wrong"],
    }),
  }));
}

function layoutSources(name: string) {
  const layout = reportLayouts.find((each) => each.name === name);
  return layout === undefined ? [] : (identificationOf(layout.name)?.sources ?? []);
}

/** `0xf3`, `f3`. */
function spellings(byte: number): readonly string[] {
  const hex = byte.toString(16).padStart(2, "0");
  return [`0x${hex}`, hex];
}
