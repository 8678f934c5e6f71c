import type { ReportValues } from "../../../model/layouts/values.ts";
import type { Wanted } from "../../run-record.ts";
import { type Axis, agree, axesOf, outOf, scaleOf } from "./axes.ts";
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
  const axes = axesOf(wanted.layout);
  const goesStraight = (incoming: readonly Incoming[]): boolean =>
    axes.every((axis) => keepsWithin(axis, incoming, part, wanted.scale));
  if (agreesAtEnd(part, wanted) && beginnings(part).some(goesStraight)) return undefined;
  return turns.find(({ turned }) => {
    const other = turnedPart(part, turned);
    if (!agreesAtEnd(other, wanted)) return false;
    // Where it is not known what the session carried, some sum or other agrees by chance.
    const isKnown = part.early === 0 && !part.isCut;
    return isKnown || beginnings(other).some((incoming) => lands(axes, incoming, part, wanted));
  });
}

/** The session as it would be had the mouse moved in that direction. */
export function turnedPart(part: Part, turned: Turn["turned"]): Part {
  const incoming = part.incoming.map(({ values, spoilt, ...report }) => ({
    ...report,
    values: turned(values),
    spoilt: spoilt && turned(spoilt),
  }));
  return { ...part, incoming };
}

function agreesAtEnd(part: Part, { layout, scale }: Wanted): boolean {
  return explain(part, layout, scale, "careful").every(({ agrees }) => agrees);
}

/** What the session may have carried, spoilt reports left out: what came before it may be kept or forgotten. */
function beginnings({ incoming, early }: Part): readonly (readonly Incoming[])[] {
  return Array.from({ length: early + 1 }, (_, first) =>
    incoming.slice(first).filter(({ spoilt }) => spoilt === undefined),
  );
}

/** What has gone out lies between sums of what had come by then: a movement may be on its way in pieces. */
function keepsWithin(axis: Axis, incoming: readonly Incoming[], { out }: Part, scale: number): boolean {
  const waiting = [...incoming];
  let [gone, come, least, most] = [0, 0, 0, 0];
  for (const { from, values } of out) {
    while ((waiting[0]?.readableAt ?? from) < from) {
      come += (waiting.shift()?.values[axis.name] ?? 0) * scaleOf(axis, scale);
      [least, most] = [Math.min(least, come), Math.max(most, come)];
    }
    gone += outOf(axis, values);
    if (gone <= least - 1 || gone >= most + 1) return false;
  }
  return true;
}

/** Most reports that move the pointer bring it to where the mouse had been by then, on all axes at once. */
function lands(
  axes: readonly Axis[],
  incoming: readonly Incoming[],
  { out }: Part,
  { scale }: Wanted,
): boolean {
  const sums = axes.map(() => 0);
  const states = incoming.map(({ readableAt, values }) => {
    for (const [index, { name }] of axes.entries()) sums[index] = (sums[index] ?? 0) + (values[name] ?? 0);
    return { readableAt, sums: [...sums] };
  });
  const gone = axes.map(() => 0);
  let [next, moved, landed] = [0, 0, 0];
  for (const { from, values } of out) {
    if (axes.every(({ name }) => (values[name] ?? 0) === 0)) continue;
    moved += 1;
    for (const [index, axis] of axes.entries()) gone[index] = (gone[index] ?? 0) + outOf(axis, values);
    const at = states.findIndex(
      (state, index) =>
        index >= next &&
        state.readableAt < from &&
        axes.every((axis, each) => agree(axis, state.sums[each] ?? 0, gone[each] ?? 0, scale)),
    );
    if (at < 0) continue;
    landed += 1;
    next = at;
  }
  return landed * 2 > moved;
}
