import type { OfferedMovement } from "../server/language-server/client-messages/lenses.ts";

/** The movement of a list that a lens shows: as it is called there, or as what a stroke comes to. */
export function shownMovement(
  offered: readonly OfferedMovement[],
  given: string | undefined,
): OfferedMovement | undefined {
  if (given === undefined) return undefined;
  return (
    offered.find((each) => each.given === given) ?? offered.find((each) => each.given.endsWith(`: ${given}`))
  );
}
