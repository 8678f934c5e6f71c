import type { SimulateSettings } from "../../notes/settings/settings.ts";
import { ms } from "../time/time.ts";
import type { Stroke } from "./stroke.ts";
import { sampleStrokes } from "./strokes.ts";

/** The project's own strokes, as edgewise.json has them. */
export function ownStrokes({ ownStrokes: own }: SimulateSettings): readonly Stroke[] {
  return [...own].map(([name, { value }]) => ({
    name,
    title: "A stroke of edgewise.json.",
    steps: value.map(({ ms: length, ...rest }) => ({ ...rest, over: length * ms })),
  }));
}

/** All strokes that there are for a project: its own, then those of the bench. A stroke of its own hides one of its name. */
export function strokesFor(settings: SimulateSettings): readonly Stroke[] {
  const own = ownStrokes(settings);
  const taken = new Set(own.map(({ name }) => name));
  return [...own, ...sampleStrokes.filter(({ name }) => !taken.has(name))];
}

/** What shows most in little time: single counts, both axes at speed, more than a report holds, buttons, and all together. */
const telling: ReadonlySet<string> = new Set(["nudge", "fast-diagonals", "flick", "click", "all-at-once"]);

/** The strokes that are run where nobody names any: the project's own and, of the bench's, those that tell most. */
export function usualStrokes(settings: SimulateSettings): readonly Stroke[] {
  return strokesFor(settings).filter(({ name }) => settings.ownStrokes.has(name) || telling.has(name));
}
