import type { Rule } from "../rule.ts";
import { problemsOf } from "./problems-of.ts";

export const unknownName: Rule = {
  id: "note/unknown-name",
  title: "A name in a wire note that does not exist",
  severity: "error",
  why:
    "A misspelt chip, pin, layout or quantity takes the note's effect away without a sound: no pin of that name is ever " +
    "looked at. The nearest name that exists is offered.",
  wrong: {
    "main.c":
      "// @wire board atmega328p clock=16MHz\n// @wire ps2 clock=PD9 data=PD3\nint main(void) { return 0; }\n",
  },
  right: {
    "main.c":
      "// @wire board atmega328p clock=16MHz\n// @wire ps2 clock=PD2 data=PD3\nint main(void) { return 0; }\n",
  },
  source: "The names of the model: chips and their pins, layouts, quantities, rules",
  check: (facts) => problemsOf(facts, "note/unknown-name"),
};
