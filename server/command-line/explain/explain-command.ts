import { coloured, plain } from "../../../src-core/present/text/paint.ts";
import { topicsAsText } from "../../../src-core/present/text/topics-as-text.ts";
import { explainTerm } from "../../../src-core/service/explain-term.ts";
import { CannotDo } from "../cannot-do.ts";
import type { Command } from "../command.ts";
import { exitStatus } from "../exit-status.ts";

/** `edgewise explain`. */
export const explainCommand: Command = {
  name: "explain",
  operands: "TERM",
  summary: "Says what a byte, quantity, layout, line format, chip or rule is, and which document says so.",
  options: [],
  details: [
    "For instance: edgewise explain 0xF3, ps2.request-hold, two-button, 7N1, atmega328p, serial/baud-error,",
    "set sample rate, 200 100 80.",
  ],
  async run({ operands }, { stdout, colours }) {
    const term = operands.join(" ").trim();
    if (term === "")
      throw new CannotDo('explain needs a term, such as "edgewise explain 0xF3"; --help has more examples');
    const found = explainTerm(term);
    if (found.kind === "unknown") throw new CannotDo(unknownTerm(term, found.near));
    stdout(topicsAsText(found.topics, colours ? coloured : plain));
    return exitStatus.clean;
  },
};

function unknownTerm(term: string, near: readonly string[]): string {
  const meant = near.map((each) => `"${each}"`).join(" or ");
  const hint = near.length === 0 ? '"edgewise explain --help" has examples' : `did you mean ${meant}?`;
  return `nothing is called "${term}"; ${hint}`;
}
