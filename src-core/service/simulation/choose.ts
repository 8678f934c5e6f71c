import { nearestNames } from "../../near-names.ts";
import type { Named } from "../../simulation-result.ts";
import { Missing } from "./missing.ts";

/** The one of this name. Throws `Missing`, which says what there is. */
export function oneNamed<Kind extends Named>(what: string, name: string, among: readonly Kind[]): Kind {
  const found = among.find((each) => each.name === name);
  if (found !== undefined) return found;
  const names = among.map((each) => each.name);
  const [near] = nearestNames(name, names, 1);
  const hint = near === undefined ? `there is ${names.join(", ")}` : `did you mean ${near}?`;
  throw new Missing(`there is no ${what} "${name}"; ${hint}`);
}

/** Those of these names, each once, in the order of the names. */
export function allNamed<Kind extends Named>(
  what: string,
  names: readonly string[],
  among: readonly Kind[],
): readonly Kind[] {
  return [...new Set(names)].map((name) => oneNamed(what, name, among));
}
