import { plain } from "../../../figures.ts";
import type { Run } from "../../run-record.ts";
import type { FindingsOfRun } from "../findings.ts";
import { scaleOf } from "./axes.ts";
import { blameFor } from "./blame.ts";
import { type Explained, explain } from "./counts.ts";
import type { Part } from "./part.ts";

const NAMES = { x: "sideways", y: "up and down", wheel: "on the wheel" } as const;

/** Counts in against counts out of one session, on every axis. */
export function judgeCounts(part: Part, run: Run, findings: FindingsOfRun): readonly Explained[] {
  const { layout, scale } = run.wanted;
  const explained = explain(part, layout, scale, "careful");
  const wantedOf = (each: Explained): number => each.in * scaleOf(each.axis, scale);
  const off = (each: Explained): number => Math.abs(wantedOf(each) - each.out);
  const wrong = explained.filter(({ agrees }) => !agrees);
  const [worst] = wrong.toSorted((a, b) => off(b) - off(a));
  if (worst === undefined) return explained;
  const blame = blameFor(part, run);
  if (blame === undefined) return explained;
  const text = wrong
    .map(({ axis, ...each }) => `${NAMES[axis.name]} ${each.in} in, ${each.out} out`)
    .join("; ");
  const factor = scale === 1 ? "" : ` (times ${plain(scale, 4)})`;
  findings.fail({
    rule: blame.rule,
    message: `${blame.what}: ${text}${factor}`,
    time: blame.time,
    at: blame.at,
    otherwise: blame.otherwise,
    measured: { value: worst.out, unit: "counts" },
    limit: { atLeast: wantedOf(worst), atMost: wantedOf(worst), unit: "counts" },
  });
  return explained;
}
