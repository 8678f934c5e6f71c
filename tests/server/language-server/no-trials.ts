import type { Trials } from "../../../server/language-server/trials/firmware-trials.ts";

/** For tests of what else the server does: nothing is ever tried. */
export const noTrials: Trials = {
  resultOf: () => undefined,
  edited: () => undefined,
  drop: () => undefined,
};
