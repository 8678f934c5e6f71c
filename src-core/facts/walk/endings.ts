import { cleanUpOf } from "../../reader/typed/clean-up.ts";
import type { FunctionSymbol, Variable } from "../../reader/typed/nodes.ts";
import type { Linkage } from "./linkage.ts";

/**
 * What is called when a local variable ends: the destructor that its author wrote, or the function that its attribute
 * names. Destructors of members and bases are not followed.
 */
export function endingOf(variable: Variable, linkage: Linkage): FunctionSymbol | undefined {
  const name = cleanUpOf(variable);
  if (name !== undefined) return linkage.functionNamed(name);
  if (variable.type.kind !== "record") return undefined;
  return linkage
    .membersOf(variable.type.record)
    ?.functions.find(({ special, bodyless }) => special === "destructor" && bodyless !== "default");
}

/** Whether something may be called when it ends; cheaper than to find out what. */
export function mayHaveEnding({ type, attributes, storage }: Variable): boolean {
  return storage === "local" && (type.kind === "record" || attributes.length > 0);
}
