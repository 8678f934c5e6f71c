import type { Comment } from "../../reader/tokens.ts";
import { codeFrom, codeOnLineOf, type FileCode } from "../attachment/file-code.ts";
import { firstTokenOf, matchingClose } from "../attachment/statement-extent.ts";

/**
 * Names of the parameters of the function that a comment stands before, read from its tokens alone, so that they
 * are there while the code around is half written.
 */
export function parametersBelow(code: FileCode, comment: Comment): readonly string[] {
  const { tokens } = code;
  const onLine = codeOnLineOf(code, comment);
  const from = onLine ?? codeFrom(code, comment.end);
  if (from?.kind !== "token") return [];
  const first = onLine === undefined ? from.index : firstTokenOf(tokens, from.index);
  let open = first;
  while (tokens[open]?.text !== "(") {
    const text = tokens[open]?.text;
    if (text === undefined || text === ";" || text === "{" || text === "}" || text === "=") return [];
    open++;
  }
  const close = matchingClose(tokens, open);
  const names: string[] = [];
  let name: string | undefined;
  for (let at = open + 1; at <= close; at++) {
    const token = tokens[at];
    const text = token?.text ?? "";
    if (text === "," || at === close) {
      if (name !== undefined) names.push(name);
      name = undefined;
    } else if (text === "[" || text === "(") {
      // `(*send)(uint8_t)` names what stands in the first parentheses.
      const isPointer = text === "(" && tokens[at + 1]?.text === "*";
      if (isPointer) name = tokens[at + 2]?.text;
      at = matchingClose(tokens, at);
    } else if (text === "=") {
      while (at + 1 < close && tokens[at + 1]?.text !== ",") at++;
    } else if (token?.kind === "identifier") name = text;
  }
  return names.filter((each) => each !== "void");
}
