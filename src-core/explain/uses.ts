import type { Span } from "../finding.ts";
import { visibleSpan } from "../reader/tokens.ts";
import { holds } from "./explanation.ts";
import type { Place } from "./place.ts";

/** The name of a macro, variable or enumerator where it is declared, and the places that use it. */
export interface DeclaredName {
  readonly name: Span;
  readonly uses: readonly Span[];
}

/** Undefined where no such name is declared at the place. */
export function usesOf({ unit, file, offset }: Place): DeclaredName | undefined {
  const { definitions, uses } = unit.preprocessed;
  for (const { definition, parameters } of definitions) {
    if (definition === undefined || parameters !== undefined || !holds(definition, file, offset)) continue;
    const { start, end } = definition;
    const found = uses.filter((use) => use.definition?.file === file && use.definition.start === start);
    return { name: { file, start, end }, uses: found.map(({ call }) => call) };
  }
  for (const { target, token } of unit.typed.references) {
    if (!("kind" in target) || (target.kind !== "variable" && target.kind !== "enumerator")) continue;
    const { first } = target.at;
    if (token !== first || !holds(first, file, offset)) continue;
    const { start, end } = first;
    const found = unit.typed.references.filter((other) => other.target === target && other.token !== first);
    return { name: { file, start, end }, uses: found.map((other) => visibleSpan(other.token)) };
  }
  return undefined;
}
