import { layoutEntries } from "../../explain/topics/layouts.ts";
import { page } from "../markdown/markdown.ts";
import { partAsMarkdown } from "../markdown/topics-as-markdown.ts";
import type { ReferencePage } from "./page.ts";

export function reports(): ReferencePage {
  const title = "Reports, bit by bit";
  const topics = layoutEntries().map((entry) => entry.topic());
  const sides = [...new Set(topics.map(({ kind }) => kind))];
  return {
    name: "reports.md",
    title,
    about:
      "the seven layouts: what each bit of each byte carries, in which direction it counts, and what announces it",
    pictures: [],
    text: page([
      `# ${title}`,
      "A note names a layout by the word in its heading: `@wire serial report=two-button`.",
      ...sides.flatMap((side) => [
        `## ${side === "report to the PC" ? "To the PC" : "From the mouse"}`,
        ...topics
          .filter(({ kind }) => kind === side)
          .flatMap(({ name, title: words, parts }) => [
            `### ${name}`,
            `*${words}*`,
            ...parts.map(partAsMarkdown),
          ]),
      ]),
    ]),
  };
}
