import type { WorkToken } from "../lexer/lexed-file.ts";

/**
 * What is known, between two tokens, of the white space there. It shows where `#` makes a string of an argument
 * (C11 6.10.3.2) that holds the expansions of other macros, and C11 does not say what white space those leave. The
 * rule is the one of gcc: of the names and parameters passed since the last token, or since the last expansion or
 * argument that ended there, the first decides; white space once found stays. With no such name the white space
 * before the next token itself counts.
 *
 * - `open`: no name was passed. The next token or name decides.
 * - `tight`: a name without white space before it was passed, whose expansion has not ended.
 * - `wide`: there is white space.
 */
export type Gap = "open" | "tight" | "wide";

/** Behind the name of a call, or of a parameter, `space` being the white space before it. */
export function pastName(gap: Gap, space: boolean): Gap {
  if (gap !== "open") return gap;
  return space ? "wide" : "tight";
}

/** Behind the end of an expansion or of an argument. */
export function pastEnd(gap: Gap): Gap {
  return gap === "tight" ? "open" : gap;
}

/** What a call or the name of a parameter stands for. White space before the first token is what follows `tight`. */
export interface Expansion {
  readonly tokens: readonly WorkToken[];
  /** There is white space behind the last token, or in all of it where there is none. */
  readonly endsInSpace: boolean;
}

/** Whether there is white space before the token that ends the gap, `space` being what it was written with. */
export function isSpaced(gap: Gap, space: boolean): boolean {
  return gap === "wide" || (gap === "open" && space);
}
