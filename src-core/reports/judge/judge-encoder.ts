import type { Axis } from "../inputs/samples.ts";
import { judgeButtons } from "./buttons.ts";
import { judgeConstants } from "./constants.ts";
import type { Evidence } from "./evidence.ts";
import type { FaultDraft } from "./fault-draft.ts";
import { judgeLeftovers } from "./leftovers.ts";
import { judgeLength } from "./lengths.ts";
import { judgeAxis, type Reach } from "./movements.ts";
import { judgeTogether } from "./together.ts";

/** What is wrong with an encoder. Where one fault explains another, the other is not told. */
export function judgeEncoder(evidence: Evidence): readonly FaultDraft[] {
  const lengths = judgeLength(evidence);
  // With bytes missing, nothing behind them can be right.
  if (lengths.some(({ place }) => place === undefined)) return lengths;
  const drafts = [...lengths, ...judgeConstants(evidence), ...judgeButtons(evidence)];
  const reaches = new Map<Axis, Reach>();
  const moved: FaultDraft[] = [];
  for (const axis of evidence.axes) {
    const { drafts: own, reach } = judgeAxis(evidence, axis);
    moved.push(...own);
    if (reach !== undefined) reaches.set(axis, reach);
  }
  drafts.push(...withOneLayout(moved));
  if (drafts.length > 0) return drafts;
  const together = judgeTogether(evidence, reaches);
  return together.length > 0 ? together : judgeLeftovers(evidence);
}

/** Bits in wrong places are told once, at the first of them: the others often go with it. */
function withOneLayout(drafts: readonly FaultDraft[]): readonly FaultDraft[] {
  const misplaced = drafts.filter(({ kind }) => kind === "layout");
  const order = ({ place }: FaultDraft): number => (place === undefined ? 0 : place.byte * 8 + 7 - place.bit);
  const [first] = misplaced.sort((a, b) => order(a) - order(b));
  return drafts.filter((draft) => draft.kind !== "layout" || draft === first);
}
