/** What a word of the trade means, for people who ask by its name: plain data, to be shown as text, Markdown or a page. */
export interface Topic {
  /** What it is asked for by: `0xF3`, `ps2.request-hold`, `two-button`, `7N1`, `atmega328p`, `serial/baud-error`. */
  readonly name: string;
  /** What kind of thing it is: `command to the mouse`. */
  readonly kind: string;
  readonly title: string;
  readonly parts: readonly Part[];
  /** Names of other topics worth asking for; each exists. */
  readonly related: readonly string[];
}

/** One paragraph, list or table. Text may hold `code` between backticks. */
export type Part =
  | { readonly kind: "text"; readonly text: string }
  | { readonly kind: "list"; readonly items: readonly string[] }
  | {
      readonly kind: "table";
      readonly head: readonly string[];
      readonly rows: readonly (readonly string[])[];
    };

/** A topic and the words by which it is found; capitals do not matter. */
export interface Entry {
  readonly words: readonly string[];
  topic(): Topic;
}

/** Paragraphs, without the empty ones. */
export function texts(...lines: readonly (string | undefined)[]): readonly Part[] {
  return lines.flatMap((text) => (text === undefined || text === "" ? [] : [{ kind: "text", text }]));
}
