import type { Expression, Place } from "../syntax/nodes.ts";
import type { Context } from "./context.ts";
import { blockScope, type Entry, lookup, makeScope, type PackEntry } from "./scope.ts";

/** The parameter packs that are named in a range of tokens, by name. */
function packsIn(context: Context, { first, end }: Place): ReadonlyMap<string, PackEntry> {
  const found = new Map<string, PackEntry>();
  for (let index = first; index < end; index += 1) {
    const token = context.passage.tokens[index];
    if (token?.kind !== "identifier" || found.has(token.text)) continue;
    const entry = lookup(context.scope, token.text);
    if (entry?.kind === "pack") found.set(token.text, entry);
  }
  return found;
}

/**
 * Where each element of what is expanded is read: the packs that it names mean one of their elements there (C++11
 * 14.5.3p4). Undefined where it names none, or packs of several lengths.
 */
export function elementContexts(context: Context, place: Place): readonly Context[] | undefined {
  const packs = packsIn(context, place);
  const lengths = new Set([...packs.values()].map(({ elements }) => elements.length));
  const [length] = lengths;
  if (length === undefined || lengths.size > 1) return undefined;
  return Array.from({ length }, (_, index) => {
    // A scope of a template is looked through: what is declared in it is declared around it.
    const scope =
      context.scope.kind === "block"
        ? blockScope(context.scope)
        : makeScope("template", context.scope, context.scope.prefix);
    for (const [name, { elements }] of packs) {
      const element: Entry | undefined = elements[index];
      if (element !== undefined) scope.names.set(name, element);
    }
    return { ...context, scope };
  });
}

/** `f(args)...` as the expressions that it stands for; what cannot be expanded stays as it is. */
export function expanded(context: Context, expressions: readonly Expression[]): readonly Expression[] {
  if (!expressions.some(({ kind }) => kind === "expansion")) return expressions;
  return expressions.flatMap((expression): Expression[] => {
    if (expression.kind !== "expansion") return [expression];
    const { pattern, first, end } = expression;
    const length = elementContexts(context, pattern)?.length;
    if (length === undefined) return [expression];
    return Array.from({ length }, (_, index) => ({ kind: "pack-element", first, end, pattern, index }));
  });
}
