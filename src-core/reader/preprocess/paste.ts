import { makeToken, type WorkToken } from "../lexer/lexed-file.ts";
import { type Language, Scanner } from "../lexer/scanner.ts";
import type { MacroUse, TokenKind } from "../tokens.ts";

/** The token that `##` makes of two (C11 6.10.3.3), or undefined where they do not form one. */
export function pasteTokens(
  left: WorkToken,
  right: WorkToken,
  operator: WorkToken,
  use: MacroUse,
  language: Language,
): WorkToken | undefined {
  const text = left.text + right.text;
  const kind = kindOf(text, left, right, language);
  if (kind === undefined) return undefined;
  return makeToken(operator.file, operator.start, operator.end, kind, text, left.space, use);
}

function kindOf(text: string, left: WorkToken, right: WorkToken, language: Language): TokenKind | undefined {
  if (left.kind === "identifier" && right.kind === "identifier") return "identifier";
  if (left.kind === "number" && right.kind === "identifier") return "number";
  if (text.startsWith("//") || text.startsWith("/*")) return undefined;
  const scanner = new Scanner(text, language);
  scanner.scan(0);
  return scanner.end === text.length && scanner.problem === undefined ? scanner.kind : undefined;
}
