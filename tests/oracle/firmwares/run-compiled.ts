import { Bench } from "../../../src-core/bench/bench.ts";
import { createChip } from "../../../src-core/bench/chip/chip.ts";
import type { Wiring } from "../../../src-core/bench/chip/wiring.ts";
import { ImageEngine } from "../../../src-core/bench/engines/image-engine.ts";
import { mouseNamed } from "../../../src-core/bench/mice/profiles.ts";
import { pcNamed } from "../../../src-core/bench/pcs/pc-profiles.ts";
import type { Run } from "../../../src-core/bench/run-record.ts";
import { sampleStrokes } from "../../../src-core/bench/strokes/strokes.ts";
import { layoutNamed } from "../../../src-core/model/report-layouts.ts";
import type { Target } from "./compile-style.ts";

/** Pins and layout as the style's notes or edgewise.json have them. */
export interface Around {
  readonly wiring: Wiring;
  readonly layout: string;
}

export interface Cell {
  readonly mouse: string;
  readonly pc: string;
  readonly stroke: string;
}

function found<T>(value: T | undefined): T {
  if (value === undefined) throw new Error("no such name");
  return value;
}

/** Runs an image between a mouse and a PC. Throws where its code stops before the run is over. */
export function runCompiled(program: Uint16Array, { chip, hz }: Target, around: Around, cell: Cell): Run {
  const made = createChip({ name: chip, hz, program });
  if (made.kind !== "chip") throw new Error(made.message);
  const bench = new Bench({
    mouse: found(mouseNamed(cell.mouse)),
    pc: found(pcNamed(cell.pc)),
    stroke: found(sampleStrokes.find(({ name }) => name === cell.stroke)),
    layout: found(layoutNamed(around.layout)),
    baud: 1200,
    scale: 1,
    seed: 1,
  });
  const { run, end } = bench.run(new ImageEngine(made.chip, around.wiring));
  if (end.kind !== "ended") throw new Error(end.message);
  return run;
}
