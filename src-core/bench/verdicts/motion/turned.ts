import type { ReportValues } from "../../../model/layouts/values.ts";
import type { Wanted } from "../../run-record.ts";
import { type Axis, axesOf, outOf, scaleOf } from "./axes.ts";
import { explain } from "./counts.ts";
import type { Incoming } from "./incoming.ts";
import type { Part } from "./part.ts";

/** Movement that arrives whole, but in another direction. */
export interface Turn {
  readonly rule: "report/y-direction" | "report/layout" | "report/counts-lost";
  readonly what: string;
  readonly turned: (values: ReportValues) => ReportValues;
}

const turns: readonly Turn[] = [
  {
    rule: "report/y-direction",
    what: "up and down are exchanged",
    turned: ({ y = 0, ...others }) => ({ ...others, y: -y }),
  },
  {
    rule: "report/counts-lost",
    what: "left and right are exchanged",
    turned: ({ x = 0, ...others }) => ({ ...others, x: -x }),
  },
  {
    rule: "report/layout",
    what: "the movement to the side and the one up and down are exchanged",
    turned: ({ x = 0, y = 0, ...others }) => ({ ...others, x: y, y: x }),
  },
];

/** The turn that explains what went out, at the end and on the way, where it cannot be explained without. */
export function turnOf(part: Part, wanted: Wanted): Turn | undefined {
  if (fits(part, wanted)) return undefined;
  return turns.find(({ turned }) => {
    const spoiltTurned = (values: ReportValues | undefined) => values && turned(values);
    const incoming = part.incoming.map((each) => ({
      ...each,
      values: turned(each.values),
      spoilt: spoiltTurned(each.spoilt),
    }));
    return fits({ ...part, incoming }, wanted);
  });
}

function fits(part: Part, wanted: Wanted): boolean {
  if (!explain(part, wanted.layout, wanted.scale, "careful").every(({ agrees }) => agrees)) return false;
  return Array.from({ length: part.early + 1 }, (_, first) => part.incoming.slice(first)).some((incoming) =>
    axesOf(wanted.layout).every((axis) => keepsWithin(axis, incoming, part, wanted.scale)),
  );
}

/** What has gone out lies between sums of what had come by then: a movement may be on its way in pieces. */
function keepsWithin(axis: Axis, incoming: readonly Incoming[], { out }: Part, scale: number): boolean {
  const waiting = [...incoming];
  let [gone, come, least, most] = [0, 0, 0, 0];
  for (const { from, values } of out) {
    while ((waiting[0]?.readableAt ?? from) < from) {
      const report = waiting.shift();
      if (report?.spoilt === undefined) come += (report?.values[axis.name] ?? 0) * scaleOf(axis, scale);
      [least, most] = [Math.min(least, come), Math.max(most, come)];
    }
    gone += outOf(axis, values);
    if (gone <= least - 1 || gone >= most + 1) return false;
  }
  return true;
}
