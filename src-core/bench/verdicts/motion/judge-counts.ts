import { plain } from "../../../figures.ts";
import type { Run } from "../../run-record.ts";
import type { FindingsOfRun } from "../findings.ts";
import type { AxisCounts } from "../verdict.ts";
import { agree, axesOf, outOf } from "./axes.ts";
import { blameFor } from "./blame.ts";
import { allOf, type Carried, carriedBy, type Part } from "./part.ts";

const NAMES = { x: "sideways", y: "up and down", wheel: "on the wheel" } as const;

/** Counts in against counts out of one session; gives which of the mouse's reports it carried, undefined where counts are lost. */
export function judgeCounts(part: Part, run: Run, findings: FindingsOfRun): Carried | undefined {
  const { layout, scale } = run.wanted;
  const carried = carriedBy(part, layout, scale, "careful");
  if (carried !== undefined) return carried;
  const blame = blameFor(part, run);
  const wrong = countsOf(part, allOf(part), run).filter((each) => !agree(each.in, each.out, scale));
  const [worst] = wrong.toSorted((a, b) => Math.abs(b.in * scale - b.out) - Math.abs(a.in * scale - a.out));
  const text = wrong.map(({ axis, ...each }) => `${NAMES[axis]} ${each.in} in, ${each.out} out`).join("; ");
  const factor = scale === 1 ? "" : ` (times ${plain(scale, 4)})`;
  findings.fail({
    rule: blame.rule,
    message: `${blame.what}: ${text === "" ? "the counts do not agree" : text}${factor}`,
    time: blame.time,
    at: blame.at,
    ...(worst === undefined
      ? {}
      : {
          measured: { value: worst.out, unit: "counts" },
          limit: { atLeast: worst.in * scale, atMost: worst.in * scale, unit: "counts" },
        }),
  });
  return undefined;
}

/** Spoilt reports left out. */
export function countsOf(part: Part, { first, last }: Carried, run: Run): readonly AxisCounts[] {
  const incoming = part.incoming.slice(first, last).filter(({ spoilt }) => spoilt === undefined);
  return axesOf(run.wanted.layout).map((axis) => ({
    axis: axis.name,
    in: incoming.reduce((sum, { values }) => sum + (values[axis.name] ?? 0), 0),
    out: part.out.reduce((sum, { values }) => sum + outOf(axis, values), 0),
  }));
}
