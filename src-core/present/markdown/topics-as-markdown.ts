import type { Part, Topic } from "../../explain/topics/topic.ts";

/** Topics as a Markdown page, each with a heading of its own. */
export function topicsAsMarkdown(topics: readonly Topic[]): string {
  return topics.map((topic) => `${topicAsMarkdown(topic)}\n`).join("\n");
}

function topicAsMarkdown({ name, kind, title, parts, related }: Topic): string {
  return [
    `# ${escaped(`${name}: ${title}`)}`,
    `*${kind}*`,
    ...parts.map(partAsMarkdown),
    ...(related.length === 0 ? [] : [`See also: ${related.map((each) => `\`${each}\``).join(", ")}`]),
  ].join("\n\n");
}

export function partAsMarkdown(part: Part): string {
  switch (part.kind) {
    case "text":
      return escaped(part.text);
    case "list":
      return part.items.map((item) => `- ${escaped(item)}`).join("\n");
    case "table":
      return [part.head, part.head.map(() => "---"), ...part.rows].map(rowAsMarkdown).join("\n");
  }
}

function rowAsMarkdown(cells: readonly string[]): string {
  return `| ${cells.map((cell) => cell.replaceAll("|", "\\|")).join(" | ")} |`;
}

/** Characters that would start emphasis or HTML, outside of code. */
function escaped(text: string): string {
  return text
    .split("`")
    .map((piece, index) => (index % 2 === 1 ? piece : piece.replace(/[*_<]/g, "\\$&")))
    .join("`");
}
