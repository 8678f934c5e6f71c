import type { Part, Topic } from "../../explain/topics/topic.ts";
import { escaped, list, table } from "./markdown.ts";

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
      return list(part.items.map(escaped));
    case "table":
      return table(part.head, part.rows);
  }
}
