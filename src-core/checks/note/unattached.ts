import type { Rule } from "../rule.ts";
import { problemsOf } from "./problems-of.ts";

export const unattached: Rule = {
  id: "note/unattached",
  title: "A wire note that belongs to nothing",
  severity: "warning",
  why:
    "A note about a constant or a function counts for the declaration right below it or on its line. When that declaration " +
    "moves away the note is left behind and checks nothing; an `allow` that no longer allows anything would one day hide a " +
    "new fault.",
  wrong: {
    "main.c":
      "// @wire board atmega328p clock=16MHz\nint main(void) { return 0; }\n\n// @wire means ps2.request-hold\n",
  },
  right: {
    "main.c":
      "// @wire board atmega328p clock=16MHz\n\n// @wire means ps2.request-hold\n#define HOLD_US 100\n\nint main(void) { return 0; }\n",
  },
  source: "The grammar of wire notes",
  check: (facts) => problemsOf(facts, "note/unattached"),
};
