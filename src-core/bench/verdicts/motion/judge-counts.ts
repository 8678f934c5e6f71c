import { plain } from "../../../figures.ts";
import type { Run } from "../../run-record.ts";
import type { FindingsOfRun } from "../findings.ts";
import { scaleOf } from "./axes.ts";
import { blameFor, blameForTurn } from "./blame.ts";
import { type Explained, explain } from "./counts.ts";
import type { Part } from "./part.ts";
import { turnOf } from "./turned.ts";

const NAMES = { x: "sideways", y: "up and down", wheel: "on the wheel" } as const;

export interface Counted {
  readonly axes: readonly Explained[];
  /** All that came in went out. */
  readonly agree: boolean;
}

/** Counts in against counts out of one session, on every axis. */
export function judgeCounts(part: Part, run: Run, findings: FindingsOfRun): Counted {
  const { layout, scale } = run.wanted;
  const explained = explain(part, layout, scale, "careful");
  const wantedOf = (each: Explained): number => each.in * scaleOf(each.axis, scale);
  const off = (each: Explained): number => Math.abs(wantedOf(each) - each.out);
  const wrong = explained.filter(({ agrees }) => !agrees);
  const turn = turnOf(part, run.wanted);
  const counted: Counted = { axes: explained, agree: wrong.length === 0 && turn === undefined };
  if (counted.agree) return counted;
  const blame = turn === undefined ? blameFor(part, run) : blameForTurn(turn, part, run);
  if (blame === undefined) return counted;
  const { rule, what, time, at, otherwise } = blame;
  const [worst] = wrong.toSorted((a, b) => off(b) - off(a));
  if (worst === undefined) {
    findings.fail({ rule, message: `${what}, though the sums are alike in the end`, time, at, otherwise });
    return counted;
  }
  const text = wrong
    .map(({ axis, ...each }) => `${NAMES[axis.name]} ${each.in} in, ${each.out} out`)
    .join("; ");
  const factor = scale === 1 ? "" : ` (times ${plain(scale, 4)})`;
  findings.fail({
    rule,
    message: `${what}: ${text}${factor}`,
    time,
    at,
    otherwise,
    measured: { value: worst.out, unit: "counts" },
    limit: { atLeast: wantedOf(worst), atMost: wantedOf(worst), unit: "counts" },
  });
  return counted;
}
