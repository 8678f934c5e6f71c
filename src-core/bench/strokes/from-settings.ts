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

/** The strokes that the settings ask for, and the names that there are not. Where they ask for none: all there are. */
export function chosenStrokes(settings: SimulateSettings): {
  readonly strokes: readonly Stroke[];
  readonly unknown: SimulateSettings["strokes"];
} {
  const all = strokesFor(settings);
  const asked = settings.strokes;
  if (asked.length === 0) return { strokes: all, unknown: [] };
  const strokes = asked.flatMap(({ value }) => all.find(({ name }) => name === value) ?? []);
  return { strokes, unknown: asked.filter(({ value }) => !all.some(({ name }) => name === value)) };
}
