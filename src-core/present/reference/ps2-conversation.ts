import { replyWords } from "../../explain/reply-words.ts";
import { citation } from "../../explain/topics/citation.ts";
import { hexText } from "../../figures.ts";
import { commands } from "../../model/commands.ts";
import { knocks } from "../../model/knocks.ts";
import { mouseDefaults, resolutions } from "../../model/mouse-settings.ts";
import { ps2Settings } from "../../model/quantities/ps2-settings.ts";
import { deviceIds, replies } from "../../model/replies.ts";
import { escaped, list, page, table } from "../markdown/markdown.ts";
import type { ReferencePage } from "./page.ts";
import { quantityTable } from "./quantity-table.ts";

const argumentWords = { none: "", "sample-rate": "sample rate", resolution: "resolution code" } as const;

export function ps2Conversation(): ReferencePage {
  const title = "Commands and replies of a PS/2 mouse";
  const { sampleRate, resolution, scaling, mode, reporting, id, sources, confidence } = mouseDefaults;
  return {
    name: "ps2-commands.md",
    title,
    about:
      "the sixteen commands with their replies, what wakes a wheel, and how a mouse is set after a reset",
    pictures: [],
    text: page([
      `# ${title}`,
      "The mouse answers every byte from the host, arguments included. Bytes are sent as [the wires](ps2-wires.md) say.",
      "## Commands",
      table(
        ["byte", "command", "argument", "answer", "what it does", "where it stands"],
        commands.map(
          ({ code, name, argument, replies: parts, meaning, sources: cited, confidence: sure }) => [
            `\`${hexText(code)}\``,
            name,
            argumentWords[argument],
            parts.map((part) => replyWords[part]).join(", "),
            escaped(meaning),
            cite(cited, sure),
          ],
        ),
      ),
      "## Replies",
      table(
        ["byte", "reply", "what it says", "where it stands"],
        replies.map(({ code, name, meaning, sources: cited, confidence: sure }) => [
          `\`${hexText(code)}\``,
          name,
          escaped(meaning),
          cite(cited, sure),
        ]),
      ),
      "## Ids",
      table(
        ["byte", "mouse", "its reports", "where it stands"],
        deviceIds.map(({ code, layout, meaning, sources: cited }) => [
          `\`${hexText(code)}\``,
          meaning,
          `[\`${layout}\`](reports.md#${layout})`,
          cite(cited),
        ]),
      ),
      "## Sample rates that unlock more",
      'Three "set sample rate" commands in a row, each with its argument, and then "get device id":',
      table(
        ["sample rates", "id of a mouse that can", "what it does", "where it stands"],
        knocks.map(({ rates, id: unlocked, meaning, sources: cited }) => [
          rates.join(", "),
          `\`${hexText(unlocked)}\``,
          escaped(meaning),
          cite(cited),
        ]),
      ),
      "## Arguments and what they mean",
      table(
        ["resolution code", "counts per millimetre", "counts per inch, as drivers count"],
        resolutions.map(({ code, countsPerMm, countsPerInch }) => [
          `${code}`,
          `${countsPerMm}`,
          `${countsPerInch}`,
        ]),
      ),
      quantityTable(ps2Settings),
      "## After a reset",
      list([
        `sample rate ${sampleRate} reports per second`,
        `resolution code ${resolution}`,
        `scaling ${scaling}`,
        `${mode} mode`,
        `reporting ${reporting ? "on" : "off"}: a mouse that is not told to report stays silent`,
        `id \`${hexText(id)}\``,
      ]),
      cite(sources, confidence),
    ]),
  };
}

function cite(...given: Parameters<typeof citation>): string {
  return escaped((citation(...given) ?? "").replace(/^Source: /, ""));
}
