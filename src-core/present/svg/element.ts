import { attributes, textOf } from "../xml.ts";

/** A piece of a document that is written out already. */
export type Markup = string & { readonly written: "markup" };

/** An element with its attributes and what is in it. */
export function element(
  name: string,
  said: Readonly<Record<string, string | number>>,
  ...inside: readonly Markup[]
): Markup {
  const given = attributes(said);
  const start = given === "" ? name : `${name} ${given}`;
  return (inside.length === 0 ? `<${start}/>` : `<${start}>${inside.join("")}</${name}>`) as Markup;
}

export function text(words: string): Markup {
  return textOf(words) as Markup;
}

/** Text at a place; its class says how it looks. */
export function label(x: number, y: number, kind: string, words: string): Markup {
  return element("text", { class: kind, x: at(x), y: at(y) }, text(words));
}

/** A coordinate: a tenth of a pixel is enough, and keeps the document small. */
export function at(coordinate: number): number {
  return Math.round(coordinate * 10) / 10 + 0;
}
