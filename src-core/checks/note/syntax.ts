import type { Rule } from "../rule.ts";
import { problemsOf } from "./problems-of.ts";

export const syntax: Rule = {
  id: "note/syntax",
  title: "A wire note that cannot be read",
  severity: "error",
  why:
    "A note that cannot be split into a directive and its words says nothing, and whatever it should have said is " +
    "guessed from the code or not checked at all. The adapter is then checked against less than its author thinks.",
  wrong: { "main.c": "// @wire board atmega328p clock=fast\nint main(void) { return 0; }\n" },
  right: { "main.c": "// @wire board atmega328p clock=16MHz\nint main(void) { return 0; }\n" },
  source: "The grammar of wire notes",
  check: (facts) => problemsOf(facts, "note/syntax"),
};
