import type { DirectivePiece, WorkToken } from "../lexer/lexed-file.ts";
import { Macro } from "./macro.ts";
import { readReplacement } from "./replacement.ts";

export interface DefineResult {
  /** Undefined where the directive names no macro. */
  readonly macro: Macro | undefined;
  readonly problem: { readonly token: WorkToken; readonly message: string } | undefined;
}

/** Reads a `#define` (C11 6.10.3). `isFromOutside`: it stands in no file, so the macro has no place. */
export function readDefine(piece: DirectivePiece, isFromOutside: boolean): DefineResult {
  const [name, next] = piece.tokens;
  if (name?.kind !== "identifier") {
    return { macro: undefined, problem: { token: name ?? piece.hash, message: "#define needs a name." } };
  }
  if (name.text === "defined") {
    return { macro: undefined, problem: { token: name, message: '"defined" cannot be a macro.' } };
  }
  const isFunction = next?.text === "(" && !next.space;
  const list = isFunction ? readParameters(piece.tokens, 2) : undefined;
  if (list !== undefined && list.end < 0) {
    const message = `The parameter list of ${name.text} is not a list of names in parentheses.`;
    return { macro: undefined, problem: { token: name, message } };
  }
  const body = piece.tokens.slice(list?.end ?? 1);
  const { items, problem } = readReplacement(body, list?.parameters);
  const definition = isFromOutside ? undefined : { file: name.file, start: name.start, end: name.end };
  return {
    macro: new Macro({ name: name.text, definition, parameters: list?.parameters, body, items }),
    problem,
  };
}

interface ParameterList {
  readonly parameters: readonly string[];
  /** Index behind the closing parenthesis; -1 where the list is malformed. */
  readonly end: number;
}

const MALFORMED: ParameterList = { parameters: [], end: -1 };

function readParameters(tokens: readonly WorkToken[], from: number): ParameterList {
  const parameters: string[] = [];
  if (tokens[from]?.text === ")") return { parameters, end: from + 1 };
  for (let index = from; index < tokens.length; index += 1) {
    const token = tokens[index];
    if (token === undefined) break;
    if (token.text === "...") {
      parameters.push("...");
    } else if (token.kind === "identifier") {
      const isRest = tokens[index + 1]?.text === "...";
      parameters.push(isRest ? `${token.text}...` : token.text);
      if (isRest) index += 1;
    } else return MALFORMED;
    const separator = tokens[index + 1]?.text;
    if (separator === ")") return { parameters, end: index + 2 };
    if (separator !== "," || parameters.at(-1)?.endsWith("...")) return MALFORMED;
    index += 1;
  }
  return MALFORMED;
}
