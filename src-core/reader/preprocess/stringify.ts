import { makeToken, type WorkToken } from "../lexer/lexed-file.ts";
import type { MacroUse } from "../tokens.ts";

/** The string constant that `#` makes of an argument (C11 6.10.3.2), without white space before it. */
export function stringifyTokens(tokens: readonly WorkToken[], operator: WorkToken, use: MacroUse): WorkToken {
  let text = "";
  tokens.forEach((token, index) => {
    if (index > 0 && token.space) text += " ";
    const isQuoted = token.kind === "string" || token.kind === "character";
    text += isQuoted ? token.text.replace(/["\\]/g, "\\$&") : token.text;
  });
  // A lone backslash at the end would take the closing quote with it; compilers leave it out.
  const tail = /\\*$/.exec(text)?.[0].length ?? 0;
  if (tail % 2 === 1) text = text.slice(0, -1);
  return makeToken(operator.file, operator.start, operator.end, "string", `"${text}"`, false, use);
}
