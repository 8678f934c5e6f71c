import type { Rule } from "../rule.ts";
import { problemsOf } from "./problems-of.ts";

export const mismatch: Rule = {
  id: "note/mismatch",
  title: "A wire note that contradicts the code or another note",
  severity: "error",
  why:
    "Where a note says one clock and the code another, one of them is wrong, and every delay and divisor computed from it " +
    "with it. The same goes for two notes that disagree, and for a note that names a parameter the function has not.",
  wrong: {
    "main.c":
      "// @wire board atmega328p clock=16MHz\n#define F_CPU 8000000UL\nint main(void) { return 0; }\n",
  },
  right: {
    "main.c": "// @wire board atmega328p clock=8MHz\n#define F_CPU 8000000UL\nint main(void) { return 0; }\n",
  },
  source: "The code and the project's other notes",
  check: (facts) => problemsOf(facts, "note/mismatch"),
};
