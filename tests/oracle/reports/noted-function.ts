import type { Example } from "../../../src-core/checks/rule.ts";
import type { LayoutName } from "../../../src-core/model/layouts/layout.ts";

/**
 * A snippet as this suite reads it: with patterns that fit how the snippets are written, so that nothing is taken
 * from the reader that is to be tested with them.
 */
export interface NotedFunction {
  readonly language: "c" | "c++" | "sketch";
  readonly text: string;
  readonly directive: "encodes" | "decodes";
  readonly layout: LayoutName;
  /** Fields of the layout and what the note says stands for them. */
  readonly fields: readonly NotedField[];
  /** What `into` of an encoder and `from` of a decoder names. */
  readonly bytes: string;
  readonly name: string;
  readonly returns: string;
  readonly parameters: readonly Parameter[];
  /** The class of a method. */
  readonly className: string | undefined;
}

export interface NotedField {
  readonly field: string;
  readonly negated: boolean;
  /** As in the note, pointers' members with a dot. */
  readonly path: string;
  readonly bit: number | undefined;
}

export interface Parameter {
  readonly name: string;
  /** Without const, pointers, references and array bounds. */
  readonly type: string;
  readonly kind: "value" | "pointer" | "reference" | "array-reference";
}

const languages = { "main.c": "c", "main.cpp": "c++", "main.ino": "sketch" } as const;

export function notedFunction(example: Example): NotedFunction {
  const [[file, text] = ["", ""]] = Object.entries(example);
  const language = Object.entries(languages).find(([name]) => name === file)?.[1];
  const note = /@wire (encodes|decodes) (\S+) from (.*?) into (.*?)\s*(?:\*\/)?\s*\n/.exec(text);
  if (language === undefined || note === null) throw new Error(`${file} has no note that this suite reads`);
  const [whole, directive, layout, from = "", into = ""] = note;
  const encodes = directive === "encodes";
  const after = text.slice(note.index + whole.length);
  const open = after.indexOf("(");
  const head = /^([\w\s*&]*?)((?:\w+::)?)(\w+)$/.exec(after.slice(0, open).trim());
  if (head === null) throw new Error(`no function stands below the note: ${after.slice(0, open)}`);
  const [, returns = "", qualifier = "", name = ""] = head;
  const around = /\n(?:class|struct) (\w+) \{(?:(?!\n\};)[\s\S])*$/.exec(text.slice(0, note.index));
  return {
    language,
    text,
    directive: encodes ? "encodes" : "decodes",
    layout: layout as LayoutName,
    fields: (encodes ? from : into).split(" ").map(fieldOf),
    bytes: encodes ? into : from,
    name,
    returns: returns.replace(/\b(static|inline)\b/g, "").trim(),
    parameters: parametersOf(after.slice(open + 1, closing(after, open))),
    className: qualifier === "" ? around?.[1] : qualifier.slice(0, -2),
  };
}

function fieldOf(words: string): NotedField {
  const parts = /^(\w+)=(-?)([A-Za-z_][\w.>-]*?)(?:\.(\d+))?$/.exec(words);
  if (parts === null) throw new Error(`not a field of a note: ${words}`);
  const [, field = "", sign, path = "", bit] = parts;
  return {
    field,
    negated: sign === "-",
    path: path.replaceAll("->", "."),
    bit: bit === undefined ? undefined : Number(bit),
  };
}

/** Index of the parenthesis that closes the one at `open`. */
function closing(text: string, open: number): number {
  let depth = 0;
  for (let index = open; index < text.length; index += 1) {
    if (text[index] === "(") depth += 1;
    if (text[index] === ")") depth -= 1;
    if (depth === 0) return index;
  }
  throw new Error("a parenthesis is not closed");
}

function parametersOf(list: string): Parameter[] {
  const words = list.replace(/\s+/g, " ").trim();
  if (words === "" || words === "void") return [];
  return words.split(",").map((each) => {
    const bare = each.replace(/\bconst\b/g, "").trim();
    const parts = /^([\w ]+?) ?(\*|&|\(&)? ?(\w+)(\)?\[\d*\])?$/.exec(bare);
    if (parts === null) throw new Error(`not a parameter that this suite reads: ${each}`);
    const [, type = "", mark, name = "", bounds] = parts;
    if (mark === "(&") return { name, type: `${type}${(bounds ?? "").slice(1)}`, kind: "array-reference" };
    if (mark === "*" || bounds !== undefined) return { name, type, kind: "pointer" };
    return { name, type, kind: mark === "&" ? "reference" : "value" };
  });
}
