import type { SchemaDocument } from "../../notes/settings/schema-node.ts";
import type { Vocabulary } from "../../notes/vocabulary.ts";
import { escaped, page, table } from "../markdown/markdown.ts";
import { bench } from "./bench.ts";
import { chips } from "./chips.ts";
import { edgewiseJson } from "./edgewise-json.ts";
import { levels } from "./levels.ts";
import type { ReferencePage } from "./page.ts";
import { ps2Conversation } from "./ps2-conversation.ts";
import { ps2Timing } from "./ps2-timing.ts";
import { reports } from "./reports.ts";
import { serialSide } from "./serial-side.ts";
import { wireNotes } from "./wire-notes.ts";

/** What pages name beyond the model. */
export interface ReferenceNames {
  readonly vocabulary: Vocabulary;
  readonly schema: SchemaDocument;
}

/** The reference of both protocols and of what an author may write: paths from the package's root on to texts. */
export function referencePages({ vocabulary, schema }: ReferenceNames): ReadonlyMap<string, string> {
  const pages = [
    ps2Timing(),
    ps2Conversation(),
    reports(),
    serialSide(),
    levels(),
    chips(),
    wireNotes(),
    edgewiseJson(schema),
    bench(vocabulary),
  ];
  const files = pages.flatMap(({ name, text, pictures }) => [{ name, text }, ...pictures]);
  return new Map(
    [{ name: "README.md", text: index(pages) }, ...files].map(({ name, text }) => [
      `docs/reference/${name}`,
      text,
    ]),
  );
}

function index(pages: readonly ReferencePage[]): string {
  return page([
    "# Reference",
    "Made from the tables that Edgewise checks by, so that what stands here is what is checked. Each figure names the document " +
      "that it was taken from; where documents disagree, the stricter figure is the limit, and the others stand beside it.",
    table(
      ["page", "tells"],
      pages.map(({ name, title, about }) => [`[${title}](${name})`, escaped(about)]),
    ),
    "What is wrong with code stands with [the rules](../rules/README.md).",
  ]);
}
