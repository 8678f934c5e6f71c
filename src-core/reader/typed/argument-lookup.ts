import { referred } from "../types/derive.ts";
import type { Type } from "../types/types.ts";
import type { Context } from "./context.ts";
import type { TypedExpression } from "./nodes.ts";
import { enclosingRegion, lookupHere, type OverloadSet, type Scope } from "./scope.ts";

/** The class or enumeration that a type is about: that of a pointer, a reference or an array as well. */
function namedBy(type: Type): Type {
  switch (type.kind) {
    case "pointer":
    case "reference":
      return namedBy(type.to);
    case "array":
      return namedBy(type.of);
    default:
      return type;
  }
}

/** The namespaces of a type and of the bases of a class, from the class's own scope outwards. */
function scopesOf(context: Context, type: Type): readonly Scope[] {
  const named = namedBy(type);
  if (named.kind === "record") {
    const own = context.unit.classes.get(named.record)?.scope.parent;
    const bases = named.record.bases.flatMap(({ record }) => scopesOf(context, { kind: "record", record }));
    return own === undefined ? bases : [namespaceOf(own), ...bases];
  }
  if (named.kind !== "enumeration") return [];
  let scope = context.unit.global;
  for (const part of named.enumeration.name.split("::").slice(0, -1)) {
    const entry = lookupHere(scope, part);
    if (entry?.kind !== "namespace") break;
    scope = entry.scope;
  }
  return [scope];
}

function namespaceOf(scope: Scope): Scope {
  let at = enclosingRegion(scope);
  while (at.kind === "record" && at.parent !== undefined) at = enclosingRegion(at.parent);
  return at;
}

/**
 * The functions that a call by a plain name means: those that are visible, and those of the namespaces that the
 * arguments' types come from (C++11 3.4.2). Undefined for none.
 */
export function withArguments(
  context: Context,
  name: string,
  visible: OverloadSet | undefined,
  given: readonly TypedExpression[],
): OverloadSet | undefined {
  if (context.unit.language === "c") return visible;
  const scopes = new Set(given.flatMap(({ type }) => scopesOf(context, referred(type))));
  const sets = [...scopes].flatMap((scope) => {
    const entry = lookupHere(scope, name);
    return entry?.kind === "overloads" && entry !== visible ? [entry] : [];
  });
  if (sets.length === 0) return visible;
  const all = visible === undefined ? sets : [visible, ...sets];
  return {
    kind: "overloads",
    name,
    functions: [...new Set(all.flatMap(({ functions }) => functions))],
    templates: [...new Set(all.flatMap(({ templates }) => templates))],
  };
}
