import type { Preprocessed, Token } from "../reader/tokens.ts";
import { type NoteProblem, noteProblem, replacement } from "./note-problem.ts";
import { formatClock } from "./values/clock.ts";
import type { Wires } from "./wires.ts";

/**
 * `note/mismatch` where the clock that a note or edgewise.json says is not the `F_CPU` that the code defines:
 * one of the two is wrong, and delays and baud divisors with it. Said once for each value.
 */
export function checkClock(wires: Wires, units: Iterable<Preprocessed>): readonly NoteProblem[] {
  const said = wires.board.clockHz;
  if (said === undefined) return [];
  const problems: NoteProblem[] = [];
  const seen = new Set<number>();
  for (const { macros } of units) {
    const macro = macros.get("F_CPU");
    if (macro?.definition === undefined || macro.parameters !== undefined) continue;
    const defined = literalValue(macro.body);
    if (defined === undefined || defined === said.value || seen.has(defined)) continue;
    seen.add(defined);
    const [clock, code] = [formatClock(said.value), formatClock(defined)];
    const message = `the clock is said to be ${clock}, but the code defines F_CPU as ${code}`;
    const related = [{ span: macro.definition, message: `\`F_CPU\` is ${code} here` }];
    const isNote = !said.span.file.endsWith(".json");
    const fixes = [replacement(said.span, isNote ? code : JSON.stringify(code))];
    problems.push(noteProblem("note/mismatch", said.span, message, { related, fixes }));
  }
  return problems;
}

/** Numbers and their products, in parentheses or not; undefined for anything else. */
function literalValue(body: readonly Token[]): number | undefined {
  const texts = body.map((token) => token.text).filter((text) => text !== "(" && text !== ")");
  if (texts.length === 0) return undefined;
  let product = 1;
  for (const [index, text] of texts.entries()) {
    if (index % 2 === 1) {
      if (text !== "*") return undefined;
      continue;
    }
    const digits = /^(\d+(?:\.\d*)?(?:[eE]\d+)?)[uUlLfF]*$/.exec(text.replaceAll("'", ""));
    if (digits === null || /^0\d/.test(text)) return undefined;
    product *= Number(digits[1]);
  }
  return texts.length % 2 === 1 ? product : undefined;
}
