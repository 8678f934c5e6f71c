import { makeToken, type WorkToken } from "../lexer/lexed-file.ts";
import type { MacroUse } from "../tokens.ts";

/** The string constant that `#` makes of an argument (C11 6.10.3.2). */
export function stringifyTokens(
  tokens: readonly WorkToken[],
  operator: WorkToken,
  space: boolean,
  use: MacroUse,
): WorkToken {
  let text = "";
  tokens.forEach((token, index) => {
    if (index > 0 && token.space) text += " ";
    const isQuoted = token.kind === "string" || token.kind === "character";
    text += isQuoted ? token.text.replace(/["\\]/g, "\\$&") : token.text;
  });
  return makeToken(operator.file, operator.start, operator.end, "string", `"${text}"`, space, use);
}
