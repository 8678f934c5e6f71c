import { reportLayouts } from "../../model/report-layouts.ts";
import type { EncoderProposal } from "../../note-proposal.ts";
import type { NoteFacts } from "../../notes/note-facts.ts";
import type { Program } from "../../reader/program/program.ts";
import { visibleRange, visibleSpan } from "../../reader/tokens.ts";
import type { FunctionSymbol } from "../../reader/typed/nodes.ts";
import { NotTried } from "../subject/not-tried.ts";
import { type Candidate, candidates } from "./candidates.ts";
import { type Match, matchOf } from "./match.ts";
import { type Wiring, wiringOf } from "./wiring.ts";

/** A function of which so much is as a layout wants it is taken for an encoder, with faults perhaps. */
const likeness = 0.75;

/** Notes for functions without one that work like encoders. Never throws; undefined when cancelled. */
export function proposeEncoders(
  program: Program,
  { attached }: NoteFacts,
  cancelled?: () => boolean,
): readonly EncoderProposal[] | undefined {
  const noted = new Set<FunctionSymbol>();
  for (const { note, targets } of attached) {
    if (note.kind !== "encodes" && note.kind !== "decodes") continue;
    for (const { target } of targets)
      if (target.kind === "function") noted.add(program.definitionOf(target.function) ?? target.function);
  }
  const proposals: EncoderProposal[] = [];
  for (const candidate of candidates(program, noted)) {
    if (cancelled?.() === true) return undefined;
    const found = bestMatch(program, candidate, cancelled);
    if (found !== undefined) proposals.push(proposal(candidate, found.match, found.outlet));
  }
  return cancelled?.() === true ? undefined : proposals;
}

function bestMatch(
  program: Program,
  { symbol, unit, inputs, outlets }: Candidate,
  cancelled: (() => boolean) | undefined,
): { readonly match: Match; readonly outlet: string } | undefined {
  let best: { readonly match: Match; readonly outlet: string } | undefined;
  for (const outlet of outlets) {
    const wiring = wiringIfAny(() => wiringOf({ program, unit, symbol, cancelled }, outlet, inputs));
    if (wiring === undefined) continue;
    for (const layout of reportLayouts) {
      const match = matchOf(layout, wiring);
      if (match === undefined || match.hits < likeness * match.bits) continue;
      if (best === undefined || match.hits > best.match.hits) best = { match, outlet };
    }
  }
  return best;
}

/** A function that cannot be run is no candidate, and nobody said that it was one. */
function wiringIfAny(make: () => Wiring): Wiring | undefined {
  try {
    return make();
  } catch (problem) {
    if (problem instanceof NotTried) return undefined;
    throw problem;
  }
}

function proposal({ symbol }: Candidate, { layout, fields }: Match, outlet: string): EncoderProposal {
  const { file, start } = visibleRange(symbol.declarationAt.first, symbol.declarationAt.last);
  const { file: nameFile, start: nameStart, end } = visibleSpan(symbol.at.first);
  const note = `@wire encodes ${layout.name} from ${fields.join(" ")} into ${outlet}`;
  return {
    span: { file: nameFile, start: nameStart, end },
    reason: `\`${symbol.name}\` works like an encoder of ${layout.name} reports`,
    note,
    layout: layout.name,
    before: { file, start, end: start },
  };
}
