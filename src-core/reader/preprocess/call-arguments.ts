import type { WorkToken } from "../lexer/lexed-file.ts";

export interface CallArguments {
  readonly arguments: readonly (readonly WorkToken[])[];
  /** The variable argument was not given: the call ends before it, or is `f()` and it is the only one. */
  readonly isRestAbsent: boolean;
  /** All that was read, parentheses included, to be given back where the call does not fit. */
  readonly tokens: readonly WorkToken[];
  readonly problem: string | undefined;
}

/** Reads the arguments of a call behind its opening parenthesis (C11 6.10.3, 10 to 12). */
export function collectArguments(
  open: WorkToken,
  parameters: readonly string[],
  isVariadic: boolean,
  next: () => WorkToken | undefined,
): CallArguments {
  const tokens: WorkToken[] = [open];
  const found: WorkToken[][] = [[]];
  let depth = 1;
  while (depth > 0) {
    const token = next();
    if (token === undefined) {
      return { arguments: [], isRestAbsent: false, tokens, problem: "the call has no closing parenthesis." };
    }
    tokens.push(token);
    if (token.kind === "punctuator") {
      if (token.text === "(") depth += 1;
      else if (token.text === ")") depth -= 1;
      else if (token.text === "," && depth === 1 && !(isVariadic && found.length >= parameters.length)) {
        found.push([]);
        continue;
      }
    }
    if (depth > 0) found[found.length - 1]?.push(token);
  }
  return {
    arguments: withRest(found, parameters.length, isVariadic),
    isRestAbsent:
      isVariadic && (found.length < parameters.length || (parameters.length === 1 && isNothing(found))),
    tokens,
    problem: mismatch(found, parameters, isVariadic),
  };
}

function isNothing(found: readonly (readonly WorkToken[])[]): boolean {
  return found.length === 1 && found[0]?.length === 0;
}

/** As many arguments as there are parameters: the variable one may be left out altogether. */
function withRest(
  found: readonly WorkToken[][],
  wanted: number,
  isVariadic: boolean,
): readonly WorkToken[][] {
  if (wanted === 0) return [];
  return isVariadic && found.length === wanted - 1 ? [...found, []] : found;
}

function mismatch(
  found: readonly (readonly WorkToken[])[],
  parameters: readonly string[],
  isVariadic: boolean,
): string | undefined {
  const wanted = parameters.length;
  if (wanted === 0 && isNothing(found)) return undefined;
  const least = isVariadic ? wanted - 1 : wanted;
  if (found.length >= least && found.length <= wanted) return undefined;
  const given = isNothing(found) && wanted !== 1 ? 0 : found.length;
  const count = isVariadic ? `at least ${least}` : String(wanted);
  return `the macro takes ${count} argument${count === "1" ? "" : "s"} but is given ${given}.`;
}
