import { plain } from "../../../figures.ts";
import type { Run } from "../../run-record.ts";
import type { FindingsOfRun } from "../findings.ts";
import { agree, scaleOf } from "./axes.ts";
import { blameFor, blameForTurn } from "./blame.ts";
import { type Explained, explain } from "./counts.ts";
import type { Part } from "./part.ts";
import { type Turn, turnedPart, turnOf } from "./turned.ts";

const NAMES = { x: "sideways", y: "up and down", wheel: "on the wheel" } as const;

export interface Counted {
  readonly axes: readonly Explained[];
  /** All that came in went out. */
  readonly agree: boolean;
}

/** Counts in against counts out of one session, on every axis. */
export function judgeCounts(part: Part, run: Run, findings: FindingsOfRun): Counted {
  const turn = turnOf(part, run.wanted);
  if (turn !== undefined) return judgeTurned(turn, part, run, findings);
  const { layout, scale } = run.wanted;
  const axes = explain(part, layout, scale, "careful");
  const wantedOf = (each: Explained): number => each.in * scaleOf(each.axis, scale);
  const off = (each: Explained): number => Math.abs(wantedOf(each) - each.out);
  const wrong = axes.filter(({ agrees }) => !agrees);
  const [worst] = wrong.toSorted((a, b) => off(b) - off(a));
  if (worst === undefined) return { axes, agree: true };
  const blame = blameFor(part, run);
  if (blame !== undefined) {
    const { what, ...told } = blame;
    findings.fail({
      ...told,
      message: `${what}: ${inWords(wrong, scale)}`,
      measured: { value: worst.out, unit: "counts" },
      limit: { atLeast: wantedOf(worst), atMost: wantedOf(worst), unit: "counts" },
    });
  }
  return { axes, agree: false };
}

function judgeTurned(turn: Turn, part: Part, run: Run, findings: FindingsOfRun): Counted {
  const { layout, scale } = run.wanted;
  const found = explain(turnedPart(part, turn.turned), layout, scale, "careful");
  const moved = turn.turned(Object.fromEntries(found.map(({ axis, in: counted }) => [axis.name, counted])));
  const axes = found.map((each): Explained => {
    const counted = (moved[each.axis.name] ?? 0) + 0;
    return { ...each, in: counted, agrees: agree(each.axis, counted, each.out, scale) };
  });
  const wrong = axes.filter(({ agrees }) => !agrees);
  const sums = wrong.length === 0 ? ", though the sums are alike in the end" : `: ${inWords(wrong, scale)}`;
  const { what, ...told } = blameForTurn(turn, part, run);
  findings.fail({ ...told, message: `${what}${sums}` });
  return { axes, agree: false };
}

function inWords(wrong: readonly Explained[], scale: number): string {
  const text = wrong.map(({ axis, ...each }) => `${NAMES[axis.name]} ${each.in} in, ${each.out} out`);
  return `${text.join("; ")}${scale === 1 ? "" : ` (times ${plain(scale, 4)})`}`;
}
