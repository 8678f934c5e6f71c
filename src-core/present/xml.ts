/** XML 1.0, 2.2: a document holds no other characters below the space, and no lone half of a pair. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const forbidden = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Surrogate}/gu;

/** Character data (XML 1.0, 2.4). What a document cannot hold becomes U+FFFD. */
export function textOf(text: string): string {
  return text
    .replace(forbidden, "\ufffd")
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;");
}

/** Attributes with their values, in the order given. Line ends and tabs stay what they are (XML 1.0, 3.3.3). */
export function attributes(values: Readonly<Record<string, string | number>>): string {
  return Object.entries(values)
    .map(([name, value]) => {
      const text = textOf(String(value))
        .replaceAll('"', "&quot;")
        .replace(/[\t\n\r]/g, (space) => `&#${space.charCodeAt(0)};`);
      return `${name}="${text}"`;
    })
    .join(" ");
}
