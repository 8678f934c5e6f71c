/** How long the argument is; `z` is an `int` by the name of its size. */
type Length = "" | "l" | "ll" | "z";

/** A conversion specification of C11 7.21.6.1. */
export interface Directive {
  readonly left: boolean;
  readonly plus: boolean;
  readonly space: boolean;
  readonly alternate: boolean;
  readonly zero: boolean;
  /** Undefined for none; `*` for one that comes as an argument. */
  readonly width: number | "*" | undefined;
  readonly precision: number | "*" | undefined;
  readonly length: Length;
  /** The letter. */
  readonly conversion: string;
}

export type FormatPart =
  | { readonly kind: "plain"; readonly bytes: readonly number[] }
  | { readonly kind: "directive"; readonly directive: Directive };

const DIRECTIVE = /%([-+ #0]*)(\*|\d*)(?:(\.)(\*|\d*))?(h+|l+|[jzt])?([A-Za-z%])/y;

function amount(text: string | undefined): number | "*" | undefined {
  if (text === "*") return "*";
  return text === undefined || text === "" ? undefined : Number(text);
}

function lengthOf(letters: string): Length {
  if (letters.startsWith("h")) return "";
  if (letters === "z" || letters === "t") return "z";
  return letters === "" || letters === "l" ? letters : "ll";
}

/** Splits a format. What follows a `%` that begins no specification is left out: it has no meaning. */
export function formatParts(format: readonly number[]): readonly FormatPart[] {
  const text = String.fromCharCode(...format);
  const parts: FormatPart[] = [];
  let at = 0;
  while (at < text.length) {
    const percent = text.indexOf("%", at);
    const end = percent < 0 ? text.length : percent;
    if (end > at) parts.push({ kind: "plain", bytes: format.slice(at, end) });
    if (percent < 0) break;
    DIRECTIVE.lastIndex = percent;
    const found = DIRECTIVE.exec(text);
    if (found === null) break;
    const [whole, flags = "", width, point, precision, length = "", conversion = ""] = found;
    parts.push({
      kind: "directive",
      directive: {
        left: flags.includes("-"),
        plus: flags.includes("+"),
        space: flags.includes(" "),
        alternate: flags.includes("#"),
        zero: flags.includes("0"),
        width: amount(width),
        precision: point === undefined ? undefined : (amount(precision) ?? 0),
        length: lengthOf(length),
        conversion,
      },
    });
    at = percent + whole.length;
  }
  return parts;
}
