import { DIRECTIVES, type Directive, type NamedValue, type Part } from "../../notes/grammar/directives.ts";
import { VALUE_SHAPES } from "../../notes/grammar/value-kinds.ts";
import { block, escaped, page, table } from "../markdown/markdown.ts";
import type { ReferencePage } from "./page.ts";

const belongs: Readonly<Record<Directive["belongsTo"], string>> = {
  project: "It says something of the whole project, wherever it stands.",
  constant: "It belongs to the constant that is declared next: a variable, an enumerator or a `#define`.",
  function: "It belongs to the function that is declared next.",
  code: "It belongs to the declaration or statement that comes next, or, at the end of a line, to that line.",
};

export function wireNotes(): ReferencePage {
  const title = "Wire notes";
  return {
    name: "wire-notes.md",
    title,
    about: "the notes in comments that say what is wired where and what code stands for",
    pictures: [],
    text: page([
      `# ${title}`,
      "A note is `@wire` and a directive inside any comment, up to the end of its line or comment. Notes win over " +
        "[`edgewise.json`](edgewise-json.md), which wins over what is inferred from the code. What cannot be read, names what there " +
        "is not, contradicts the code, or belongs to nothing is a finding. `edgewise notes` prints the notes that would describe " +
        "code without any.",
      ...DIRECTIVES.flatMap(directiveParts),
    ]),
  };
}

function directiveParts({
  name,
  title,
  documentation,
  belongsTo,
  example,
  parts,
}: Directive): readonly string[] {
  const values = parts.flatMap(valuesOf);
  return [
    `## ${name}`,
    `*${escaped(title)}*`,
    escaped(documentation),
    belongs[belongsTo],
    block("c", `// ${example}`),
    values.length === 0
      ? ""
      : table(
          ["word", "what it is", "for instance"],
          values.map((value) => [
            `\`${value.written}\``,
            escaped(value.documentation),
            `\`${value.example}\``,
          ]),
        ),
  ];
}

interface Written {
  readonly written: string;
  readonly documentation: string;
  readonly example: string;
}

function valuesOf(part: Part): readonly Written[] {
  switch (part.kind) {
    case "value":
      return [{ ...written(part), written: part.optional ? `[${part.name}]` : part.name }];
    case "word":
      return [{ written: part.word, documentation: part.documentation, example: part.word }];
    case "keys":
      return part.keys.map(written);
    case "fields":
      return [{ written: "field=...", documentation: part.documentation, example: "y=-dy" }];
  }
}

function written({ name, value, documentation }: NamedValue): Written {
  const { what, example } = VALUE_SHAPES[value.kind];
  if (value.kind !== "choice")
    return { written: `${name}=`, documentation: `${documentation} Written as ${what}.`, example: example };
  const choices = value.choices.map((choice) => `\`${choice.name}\`: ${choice.documentation}`);
  return {
    written: `${name}=`,
    documentation: [documentation, ...choices].join(" "),
    example: value.choices[0]?.name ?? "",
  };
}
