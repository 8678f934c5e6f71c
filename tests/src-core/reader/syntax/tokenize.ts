import type { Token, TokenKind } from "../../../../src-core/reader/tokens.ts";

const pattern =
  /\s+|\/\/.*|(?<identifier>(?!(?:u8|[LuU])["'])[A-Za-z_]\w*)|(?<number>\.?\d(?:[eEpP][+-]|[\w.']|)*)|(?<string>(?:u8|[LuU])?"(?:\\.|[^"\\])*")|(?<character>[LuU]?'(?:\\.|[^'\\])*')|(?<punctuator>->\*|<<=|>>=|\.\.\.|->|\+\+|--|<<|>>|<=|>=|==|!=|&&|\|\||[-+*/%&|^]=|::|\.\*|[-+*/%&|^~!<>=?:;,.(){}[\]#])|(?<other>.)/gy;
const kinds: readonly TokenKind[] = ["identifier", "number", "string", "character", "punctuator", "other"];

/** Tokens of a text without macros: enough for sources written in a test. */
export function tokenize(text: string): readonly Token[] {
  const tokens: Token[] = [];
  for (const match of text.matchAll(pattern)) {
    const kind = kinds.find((each) => match.groups?.[each] !== undefined);
    if (kind === undefined) continue;
    const start = match.index;
    tokens.push({
      kind,
      text: match[0],
      file: "test",
      start,
      end: start + match[0].length,
      space: true,
      macro: undefined,
    });
  }
  return tokens;
}
