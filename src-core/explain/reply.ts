import { hexText } from "../figures.ts";
import { deviceIds, type Reply, replyByCode } from "../model/replies.ts";
import { formatSources } from "../model/sources.ts";
import { evaluate } from "../reader/constants/evaluate.ts";
import { innermost } from "./around.ts";
import { comparisonAt } from "./comparison.ts";
import { type Explanation, explanation } from "./explanation.ts";
import { macroUseAt } from "./macro-uses.ts";
import type { Place } from "./place.ts";

/** A constant that a byte from the mouse is compared with: what the mouse says by it. */
export function explainReply(place: Place): Explanation | undefined {
  const { ps2, program } = place.facts;
  if (ps2.senders.length === 0 && ps2.clock === undefined) return undefined;
  const inner = innermost(place);
  const use = macroUseAt(place);
  const expression = use?.expression ?? inner?.expression;
  const span = use?.expression === undefined ? inner?.span : use.call;
  if (expression === undefined || span === undefined) return undefined;
  const value = evaluate(expression, program.model);
  if (value.kind !== "integer") return undefined;
  const reply = replyByCode(Number(value.value));
  const id = deviceIds.find(({ code }) => BigInt(code) === value.value);
  if (reply === undefined && id === undefined) return undefined;
  const comparison = comparisonAt(place, expression);
  if (comparison === undefined) return undefined;
  if (reply !== undefined) return ofReply(span, reply);
  if (id === undefined || !comparison.names.some(meansReply)) return undefined;
  return explanation(span, `${hexText(id.code)}: id of a ${id.meaning}`, [
    'The mouse sends its id after the self-test and when it is asked with the command "get device id".',
    `Source: ${formatSources(id.sources)}.`,
  ]);
}

function ofReply(span: Explanation["span"], { code, name, meaning, sources }: Reply): Explanation {
  return explanation(span, `${hexText(code)} from the mouse: ${name}`, [
    meaning,
    `Source: ${formatSources(sources)}.`,
  ]);
}

const replyWords: ReadonlySet<string> = new Set(
  "id ids ident identity identification reply replies answer response device mouse".split(" "),
);

/** Whether a name says that it stands for what the mouse says: small numbers alone do not. */
function meansReply(name: string): boolean {
  const words = name
    .replace(/([a-z0-9])(?=[A-Z])/g, "$1_")
    .toLowerCase()
    .split(/[^a-z]+/);
  return words.some((word) => replyWords.has(word));
}
