/** Something that has to be said or chosen before a firmware can be run, in one sentence. */
export class Missing extends Error {}

/** `what` gives, or in one sentence why it cannot be done. Never throws. */
export function orWhyNot<Result>(
  what: () => Result,
): Result | { readonly kind: "cannot"; readonly message: string } {
  try {
    return what();
  } catch (problem) {
    if (problem instanceof Missing) return { kind: "cannot", message: problem.message };
    const why = problem instanceof Error ? problem.message : String(problem);
    return { kind: "cannot", message: `the firmware could not be run: ${why}` };
  }
}
