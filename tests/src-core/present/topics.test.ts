import { expect, test } from "vitest";
import type { Topic } from "../../../src-core/explain/topics/topic.ts";
import { topicsAsMarkdown } from "../../../src-core/present/markdown/topics-as-markdown.ts";
import { plain } from "../../../src-core/present/text/paint.ts";
import { topicsAsText } from "../../../src-core/present/text/topics-as-text.ts";

const topic: Topic = {
  name: "five-byte",
  kind: "report",
  title: "a report",
  parts: [
    { kind: "text", text: `\`~\` marks it, 2 * 3 < 7 ${"and more ".repeat(20).trim()}` },
    { kind: "list", items: ["`x`: one", "two"] },
    {
      kind: "table",
      head: ["byte", "bit 0"],
      rows: [
        ["1", "x|0"],
        ["2", "y"],
      ],
    },
  ],
  related: ["7N1", "report/layout"],
};

test("as text, paragraphs are wrapped and tables stand in columns", () => {
  expect(topicsAsText([topic], plain)).toBe(`five-byte: a report  (report)

  ~ marks it, 2 * 3 < 7 and more and more and more and more and more and more and more and more and
  more and more and more and more and more and more and more and more and more and more and more
  and more

  - x: one
  - two

  byte  bit 0
  1     x|0
  2     y

  See also: 7N1, report/layout
`);
});

// CommonMark 0.31.2: 2.4 backslash escapes; tables are the common extension.
test("as Markdown, what would be markup is escaped outside of code", () => {
  expect(topicsAsMarkdown([topic])).toBe(`# five-byte: a report

*report*

\`~\` marks it, 2 \\* 3 \\< 7 ${"and more ".repeat(20).trim()}

- \`x\`: one
- two

| byte | bit 0 |
| --- | --- |
| 1 | x\\|0 |
| 2 | y |

See also: \`7N1\`, \`report/layout\`
`);
});
