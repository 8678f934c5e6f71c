import type { Term, Vocabulary } from "../../notes/vocabulary.ts";
import { escaped, page, table } from "../markdown/markdown.ts";
import type { ReferencePage } from "./page.ts";

export function bench({ mice, pcs, strokes }: Vocabulary): ReferencePage {
  const title = "The bench: mice, PCs and strokes";
  return {
    name: "bench.md",
    title,
    about: "the virtual mice and PCs between which `edgewise simulate` and `edgewise matrix` run a firmware",
    pictures: [],
    text: page([
      `# ${title}`,
      "`edgewise simulate --mouse NAME --pc NAME --stroke NAME` runs one; `edgewise matrix` runs every mouse at every PC. The same " +
        "names may stand under `simulate` in [`edgewise.json`](edgewise-json.md).",
      "## Mice",
      termTable("mouse", mice),
      "## PCs",
      termTable("PC", pcs),
      "## Strokes",
      "A stroke is what a hand does with the mouse. A project adds strokes of its own in `edgewise.json`, and `@wire try` names " +
        "a movement for one function.",
      termTable("stroke", strokes),
    ]),
  };
}

function termTable(kind: string, terms: readonly Term[]): string {
  return table(
    [kind, "what it is", "more"],
    terms.map(({ name, title, documentation }) => [`\`${name}\``, escaped(title), escaped(documentation)]),
  );
}
