import { mice } from "../../bench/mice/profiles.ts";
import { pcProfiles } from "../../bench/pcs/pc-profiles.ts";
import { strokesFor } from "../../bench/strokes/from-settings.ts";
import type { ReportLayout } from "../../model/layouts/layout.ts";
import type { SimulateSettings } from "../../notes/settings/settings.ts";
import type { Said } from "../../notes/wires.ts";
import { oneNamed } from "../simulation/choose.ts";
import type { Around } from "../simulation/run-on-bench.ts";

/** A mouse at a PC, and what a hand does with it, by their names. */
type Names = readonly [mouse: string, pc: string, stroke: string];

/**
 * Few runs in which much can go wrong: first a mouse that gives no trouble, with all that a hand does at once; then, each once,
 * what firmware is seldom tried with, each beside another PC and another stroke. The whole of it is what a matrix is for.
 */
const telling: readonly Names[] = [
  ["plain", "rts-toggle", "all-at-once"],
  ["answers-late", "hurried", "click"],
  ["clock-at-16-7-khz", "second-reset", "fast-diagonals"],
  ["asks-for-resend", "dtr-rts-toggle", "nudge"],
  ["restarts-itself", "plug-and-play", "flick"],
  ["unplugged-and-plugged-again", "second-reset", "drag"],
  ["disturbed-data", "rts-toggle", "fast-diagonals"],
  ["clock-at-10-khz", "patient", "double-click"],
];

/** Besides, where reports to the PC have a wheel. */
const turningWheel: Names = ["wheel", "rts-toggle", "wheel"];

/** Seeds are what makes runs repeat themselves. */
const seed = 1;

/**
 * The runs that a check makes. Mice, PCs and strokes that the project names take the place of those that it does not, and each
 * of them is in one run at least, as are its own strokes. Throws `Missing` for a name that there is not.
 */
export function cellsFor(settings: SimulateSettings, { movements }: ReportLayout): readonly Around[] {
  const strokes = strokesFor(settings);
  const hasWheel = movements.some(({ name }) => name === "wheel");
  const rows = hasWheel && settings.mice.length === 0 ? [...telling, turningWheel] : telling;
  return namesFor(settings, rows).map(([mouse, pc, stroke]) => ({
    mouse: oneNamed("mouse", mouse, mice),
    pc: oneNamed("PC", pc, pcProfiles),
    stroke: oneNamed("stroke", stroke, strokes),
    seed,
  }));
}

function namesFor(
  { mice: saidMice, pcs: saidPcs, strokes: saidStrokes, ownStrokes }: SimulateSettings,
  usual: readonly Names[],
): readonly Names[] {
  const namedMice = saidMice.length === 0 ? usual.map(([mouse]) => mouse) : namesIn(saidMice);
  const [pcs, strokes] = [namesIn(saidPcs), namesIn(saidStrokes)];
  const count = Math.max(namedMice.length, pcs.length, strokes.length);
  const rows = Array.from({ length: count }, (_, index): Names => {
    const mouse = turn(namedMice, index) ?? "";
    const [, pc, stroke] = usual.find(([name]) => name === mouse) ?? turn(usual, index) ?? ["", "", ""];
    return [mouse, turn(pcs, index) ?? pc, turn(strokes, index) ?? stroke];
  });
  const [[mouse, pc] = ["", ""]] = rows;
  const others = [...ownStrokes.keys()].filter((name) => !strokes.includes(name));
  return [...rows, ...others.map((stroke): Names => [mouse, pc, stroke])];
}

function namesIn(said: readonly Said<string>[]): readonly string[] {
  return said.map(({ value }) => value);
}

/** The item whose turn it is, over and over; undefined for none at all. */
function turn<Item>(items: readonly Item[], index: number): Item | undefined {
  return items[index % items.length];
}
