import type { Place, RunPlaceAnswer } from "../server/language-server/client-messages/runs.ts";

/** What is to be known of a jump to a place of a run: nothing where its line is what and where it was. */
export function jumpInWords({ file, line }: Place, now: RunPlaceAnswer | undefined): string | undefined {
  if (now?.kind !== "place")
    return `This is line ${line} as the run had it; ${file} may have been edited since.`;
  if (!now.isAsItWas)
    return `${file} was edited since the run: its line ${line} is not there any more as it was.`;
  if (now.place.line === line) return undefined;
  return `${file} was edited since the run: its line ${line} is line ${now.place.line} now.`;
}
