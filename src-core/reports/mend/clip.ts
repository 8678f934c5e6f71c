import type { Fix, Span } from "../../finding.ts";
import type { FunctionSymbol } from "../../reader/typed/nodes.ts";
import { inserted, ownRange, type TextOf } from "./source-text.ts";

/** Cuts a parameter off at the limits before anything else is done; none where it is not the function's to change. */
export function clipFix(
  { definition }: FunctionSymbol,
  name: string,
  { min, max }: { readonly min: number; readonly max: number },
  textOf: TextOf,
): Fix | undefined {
  const parameter = definition?.parameters.find((each) => each.name === name);
  if (definition === undefined || parameter === undefined) return undefined;
  if (parameter.type.kind !== "integer" || parameter.type.const === true) return undefined;
  const body = ownRange(definition.body.at, textOf);
  const text = body && textOf(body.file);
  if (body === undefined || text === undefined) return undefined;
  // The same distance both ways, so that it does not matter which way the parameter counts.
  const limit = Math.min(-min, max);
  const lines = [`if (${name} > ${limit}) ${name} = ${limit};`];
  if (parameter.type.signed) lines.push(`if (${name} < -${limit}) ${name} = -${limit};`);
  return {
    title: `Clip ${name} to ${parameter.type.signed ? -limit : 0} to ${limit}`,
    edits: [inserted(body, body.start + 1, indented(lines, text, body))],
  };
}

/** Lines like the first of the body, or all on one where it is written on one. */
function indented(lines: readonly string[], text: string, { start, end }: Span): string {
  const next = /^[ \t]*(\r?\n)((?:[ \t]*\r?\n)*)([ \t]*)/.exec(text.slice(start + 1, end));
  if (next === null) return ` ${lines.join(" ")}`;
  const [, lineEnd = "\n", , indent = ""] = next;
  return lines.map((line) => `${lineEnd}${indent}${line}`).join("");
}
