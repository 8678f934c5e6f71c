import type { Part, Topic } from "../../explain/topics/topic.ts";
import type { Paint } from "./paint.ts";

/** Columns that a paragraph fills at most. */
const WIDTH = 100;

/** Topics for a reader at a terminal, one below the other. */
export function topicsAsText(topics: readonly Topic[], paint: Paint): string {
  return topics.map((topic) => `${topicAsText(topic, paint)}\n`).join("\n");
}

function topicAsText({ name, kind, title, parts, related }: Topic, paint: Paint): string {
  return [
    `${paint("file", `${name}: ${title}`)}  ${paint("place", `(${kind})`)}`,
    ...parts.map(partAsText),
    ...(related.length === 0 ? [] : [paint("label", wrapped(`See also: ${related.join(", ")}`, "  "))]),
  ].join("\n\n");
}

function partAsText(part: Part): string {
  switch (part.kind) {
    case "text":
      return wrapped(bare(part.text), "  ");
    case "list":
      return part.items.map((item) => `  - ${wrapped(bare(item), "    ").trimStart()}`).join("\n");
    case "table":
      return tableAsText([part.head, ...part.rows]);
  }
}

function tableAsText(rows: readonly (readonly string[])[]): string {
  const widths = (rows[0] ?? []).map((_, column) => Math.max(...rows.map((row) => row[column]?.length ?? 0)));
  return rows
    .map((row) => `  ${row.map((cell, column) => cell.padEnd(widths[column] ?? 0)).join("  ")}`.trimEnd())
    .join("\n");
}

/** Without the backticks that mark code. */
function bare(text: string): string {
  return text.replaceAll("`", "");
}

function wrapped(text: string, indentation: string): string {
  const lines: string[] = [];
  let line = indentation;
  for (const word of text.split(" ")) {
    if (line.length > indentation.length && line.length + word.length >= WIDTH) {
      lines.push(line.trimEnd());
      line = indentation;
    }
    line += `${word} `;
  }
  return [...lines, line.trimEnd()].join("\n");
}
