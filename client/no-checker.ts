/** Why nobody answers, and what helps. */
export function noCheckerInWords(isEnabled: boolean, gaveUp: boolean): string {
  if (!isEnabled) return "The checker does not run; `edgewise.enable` starts it.";
  if (gaveUp) return "The checker does not run; `Edgewise: Restart the Checker` starts it.";
  return "The checker is starting again. Ask once more.";
}
