import { type Chip, createChip } from "../../../src-core/bench/chip/chip.ts";
import type { Wiring } from "../../../src-core/bench/chip/wiring.ts";
import type { BenchSide, Engine, EngineEnd } from "../../../src-core/bench/engine.ts";
import { ImageEngine } from "../../../src-core/bench/engines/image-engine.ts";
import { InterpreterEngine } from "../../../src-core/bench/engines/interpreter-engine.ts";
import { simulatedFirmwareChip } from "../../../src-core/bench/engines/simulated-firmware-chip.ts";
import { sketchCore } from "../../../src-core/bench/sketch-core/sketch-core.ts";
import { EventQueue } from "../../../src-core/bench/time/event-queue.ts";
import type { Time } from "../../../src-core/bench/time/time.ts";
import type { WireName } from "../../../src-core/bench/wires/edge.ts";
import { createWires } from "../../../src-core/bench/wires/wires.ts";
import type { Program } from "../../../src-core/reader/program/program.ts";

export interface ImageRun {
  readonly end: EngineEnd;
  readonly cycles: number;
  readonly notSimulated: readonly string[];
  /** Cycles at which a wire changed, and its new level. */
  edges(wire: WireName): readonly { readonly cycle: number; readonly level: number }[];
}

/** A firmware: the image of it, or its sources. */
export type Firmware = Uint16Array | Program;

/** The engine that runs a firmware on a chip and its wires. */
export function engineFor(firmware: Firmware, chip: Chip, wiring: Wiring, bench: BenchSide): Engine {
  if (firmware instanceof Uint16Array) return new ImageEngine(chip, wiring);
  const simulated = simulatedFirmwareChip(chip, wiring, bench);
  const clockHz = firmware.clockHz ?? 0;
  const core = sketchCore({
    program: firmware,
    model: chip.model,
    clockHz,
    chip: simulated,
    defines: new Map(),
  });
  return new InterpreterEngine({ program: firmware, chip: simulated, ...core });
}

/** Runs a firmware with nothing else on its wires but what `prepare` asks for, for so many of its cycles. */
export function runOnBench(options: {
  readonly name: string;
  readonly hz: number;
  readonly program: Firmware;
  readonly wiring: Wiring;
  readonly cycles: number;
  readonly prepare?: (queue: EventQueue, wires: BenchSide["wires"], at: (cycle: number) => Time) => void;
}): ImageRun {
  const { name, hz, program, wiring, cycles, prepare } = options;
  const made = createChip(program instanceof Uint16Array ? { name, hz, program } : { name, hz });
  if (made.kind !== "chip") throw new Error(made.message);
  const queue = new EventQueue();
  const wires = createWires(queue, 0);
  const cycleTime = 1e12 / hz;
  const at = (cycle: number) => Math.round(cycle * cycleTime);
  let ended = false;
  queue.at(at(cycles), () => {
    ended = true;
  });
  prepare?.(queue, wires, at);
  const bench: BenchSide = {
    wires,
    get next() {
      return queue.next;
    },
    get ended() {
      return ended;
    },
    advanceTo: (time) => queue.advanceTo(time),
  };
  const end = engineFor(program, made.chip, wiring, bench).run(bench);
  return {
    end,
    cycles: made.chip.cpu.cycles,
    notSimulated: made.chip.core.notSimulated.map(({ what }) => what),
    edges: (wire) =>
      wires.edges
        .filter((edge) => edge.wire === wire)
        .map(({ time, level }) => ({ cycle: Math.round(time / cycleTime), level })),
  };
}

/** Bytes of so many data bits and no parity on a line at rest at 1, sampled in the middle of each bit. */
export function bytesOf(
  edges: readonly { readonly cycle: number; readonly level: number }[],
  bitCycles: number,
  dataBits: number,
): readonly number[] {
  const levelAt = (cycle: number) => edges.findLast((edge) => edge.cycle <= cycle)?.level ?? 1;
  const bytes: number[] = [];
  let free = 0;
  for (const { cycle, level } of edges) {
    if (level !== 0 || cycle < free) continue;
    const bits = Array.from({ length: dataBits }, (_, bit) => levelAt(cycle + (bit + 1.5) * bitCycles));
    if (levelAt(cycle + (dataBits + 1.5) * bitCycles) !== 1) throw new Error(`no stop bit after ${cycle}`);
    bytes.push(bits.reduce((value, bit, index) => value + bit * 2 ** index, 0));
    free = cycle + (dataBits + 1.5) * bitCycles;
  }
  return bytes;
}
