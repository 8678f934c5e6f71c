import { bytesText } from "../../figures.ts";
import type { LineValues, StoredByte } from "../../line-values.ts";
import { lensTitle } from "./lens-title.ts";

/** An encoder's lines as a Markdown page, beside each the values that it stored in the bytes of the report. */
export function lineValuesAsMarkdown({ name, layout, movement, lines, elsewhere }: LineValues): string {
  const told = lensTitle({
    kind: "report",
    span: { file: "", start: 0, end: 0 },
    isStale: false,
    failure: undefined,
    subject: { file: "", name },
    builds: true,
    layout,
    movement,
  });
  const widthOfNumbers = String(lines.at(-1)?.number ?? 0).length;
  const valued = lines.filter(({ stored }) => stored.length > 0);
  const widthOfText = Math.max(0, ...valued.map(({ text }) => shown(text).length));
  const rows = lines.map(({ number, text, stored }) => {
    const line = `${String(number).padStart(widthOfNumbers)}  ${shown(text)}`;
    return stored.length === 0
      ? line.trimEnd()
      : `${line.padEnd(widthOfNumbers + 2 + widthOfText)}  => ${storedText(stored)}`;
  });
  const others = elsewhere.map((store) => `- ${store.place}: ${storedText([store])}`);
  return [
    `# ${name}, line by line`,
    told,
    `\`\`\`\`text\n${rows.join("\n")}\n\`\`\`\``,
    "Beside a line stand the values that it stored in bytes of the report, in the order in which it did. What it stores anywhere else is not shown.",
    ...(others.length === 0 ? [] : [`Stored elsewhere:\n\n${others.join("\n")}`]),
  ].join("\n\n");
}

function shown(text: string): string {
  return text.replaceAll("\t", "    ").trimEnd();
}

const most = 8;

function storedText(stored: readonly StoredByte[]): string {
  const told = stored
    .slice(0, most)
    .map(({ byte, value }) => `byte ${byte + 1} ${bytesText([value & 0xff])}`);
  return [...told, ...(stored.length > most ? ["…"] : [])].join(", ");
}
