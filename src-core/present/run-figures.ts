import { ms, type Time } from "../bench/time/time.ts";
import type { RunFigures } from "../bench/verdicts/verdict.ts";
import { bytesText } from "../figures.ts";
import type { SimulatedRun } from "../simulation-result.ts";

/** What was measured in a run, in the order in which it is told: labels with texts. */
export function figureRows({
  verdict: { figures },
  strokeBegan,
}: Pick<SimulatedRun, "verdict" | "strokeBegan">): readonly (readonly [label: string, text: string])[] {
  const { counts, clicks, delay } = figures;
  return [
    ...identified(figures),
    ...(counts ?? []).map((axis) => [axis.axis, `${axis.in} counts in, ${axis.out} out`] as const),
    ...(clicks === undefined ? [] : [["buttons", `${clicks.in} changes in, ${clicks.out} out`] as const]),
    ...(delay === undefined
      ? []
      : [["delay", `median ${milliseconds(delay.median)}, worst ${milliseconds(delay.worst)}`] as const]),
    ...(strokeBegan ? [] : [["stroke", "never began: mouse and PC were not both ready"] as const]),
  ];
}

function identified({ identifications }: RunFigures): readonly (readonly [string, string])[] {
  return identifications.map(({ outcome, bytes, delay }) => {
    const sent = bytes.length === 0 ? "" : `: ${bytesText(bytes)}`;
    const after = delay === undefined ? "" : ` after ${milliseconds(delay)}`;
    return ["identification", `${outcome}${sent}${after}`];
  });
}

export function milliseconds(time: Time): string {
  return `${(time / ms).toFixed(1)} ms`;
}
