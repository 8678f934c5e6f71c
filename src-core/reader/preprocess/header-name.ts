import type { WorkToken } from "../lexer/lexed-file.ts";

export interface HeaderName {
  readonly name: string;
  readonly isQuoted: boolean;
}

/** Reads `"name"` or `<name>` with its quotes or brackets. */
export function parseHeaderName(spelling: string): HeaderName | undefined {
  const match = /^(?:"([^"]+)"|<([^>]+)>)/.exec(spelling);
  if (match === null) return undefined;
  const [, quoted, angled] = match;
  return { name: quoted ?? angled ?? "", isQuoted: quoted !== undefined };
}

/** The header that the operand of an `#include` names; macros are expanded first where it needs them. */
export function readHeaderName(
  tokens: readonly WorkToken[],
  expand: (tokens: readonly WorkToken[]) => readonly WorkToken[],
): HeaderName | undefined {
  const first = tokens[0];
  if (first === undefined) return undefined;
  const written = first.kind === "identifier" ? undefined : parseHeaderName(first.text);
  if (written !== undefined) return written;
  const [head, ...rest] = expand(tokens);
  if (head === undefined) return undefined;
  if (head.text !== "<") return parseHeaderName(head.text);
  return parseHeaderName(
    rest.reduce((text, token) => text + (token.space ? " " : "") + token.text, head.text),
  );
}
