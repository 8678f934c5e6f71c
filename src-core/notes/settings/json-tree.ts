import { type Node, type ParseError, parseTree, printParseErrorCode } from "jsonc-parser";
import type { SettingsProblem } from "./settings.ts";

/** Deeper nesting than any sensible file has is refused before the parser recurses into it. */
const MAX_DEPTH = 64;

export interface JsonRead {
  /** The value with its places; undefined where there is none. */
  readonly root: Node | undefined;
  readonly problems: readonly SettingsProblem[];
}

/** Parses strict JSON (no comments, no trailing commas) as far as it can be understood. Never throws. */
export function readJson(file: string, text: string): JsonRead {
  const problem = (start: number, length: number, message: string): SettingsProblem => ({
    span: { file, start, end: start + length },
    message,
    suggestion: undefined,
  });
  const tooDeep = offsetOfDepth(text, MAX_DEPTH);
  if (tooDeep !== undefined) {
    return { root: undefined, problems: [problem(tooDeep, 1, `nested more than ${MAX_DEPTH} levels deep`)] };
  }
  if (text.trim() === "") {
    return { root: undefined, problems: [problem(0, 0, "the file is empty; an empty project is `{}`")] };
  }
  const errors: ParseError[] = [];
  // A byte order mark would be an error of its own; white space keeps every offset.
  const root = parseTree(text.replace(/^\uFEFF/, " "), errors, { disallowComments: true });
  const [first] = errors;
  // Later errors mostly follow from the first one.
  if (first === undefined) return { root, problems: [] };
  const start = Math.min(first.offset, text.length);
  const length = Math.min(first.length, text.length - start);
  return { root, problems: [problem(start, length, `not valid JSON: ${wordsFor(first)}`)] };
}

const ERROR_WORDS: Readonly<Record<string, string>> = {
  InvalidSymbol: "a value is a string in double quotes, a number, true, false, null, {...} or [...]",
  InvalidNumberFormat: "this is no number",
  PropertyNameExpected: "expected a name in double quotes",
  ValueExpected: "expected a value",
  ColonExpected: "expected `:` after the name",
  CommaExpected: "expected `,` before this",
  CloseBraceExpected: "expected `}`",
  CloseBracketExpected: "expected `]`",
  EndOfFileExpected: "nothing may follow the closing `}`",
  InvalidCommentToken: "comments are not allowed here",
  UnexpectedEndOfComment: "comments are not allowed here",
  UnexpectedEndOfString: 'the closing `"` is missing',
  UnexpectedEndOfNumber: "the number breaks off",
  InvalidUnicode: "`\\u` needs four hexadecimal digits",
  InvalidEscapeCharacter: "no such escape; a backslash itself is written `\\\\`",
  InvalidCharacter: "a control character or line break inside a string",
};

function wordsFor(error: ParseError): string {
  return ERROR_WORDS[printParseErrorCode(error.error)] ?? "this cannot be read";
}

/** Whether a recursive reader could run out of stack on the text. */
export function nestsTooDeep(text: string): boolean {
  return offsetOfDepth(text, MAX_DEPTH) !== undefined;
}

/** Where the text first nests deeper than `limit`; brackets within strings do not count. */
function offsetOfDepth(text: string, limit: number): number | undefined {
  let depth = 0;
  let inString = false;
  for (let at = 0; at < text.length; at++) {
    const character = text[at];
    if (inString) {
      if (character === "\\") at++;
      else if (character === '"' || character === "\n") inString = false;
    } else if (character === '"') inString = true;
    else if (character === "{" || character === "[") {
      depth++;
      if (depth > limit) return at;
    } else if (character === "}" || character === "]") depth--;
  }
  return undefined;
}
