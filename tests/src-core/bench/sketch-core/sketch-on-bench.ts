import { createChip } from "../../../../src-core/bench/chip/chip.ts";
import type { Wiring } from "../../../../src-core/bench/chip/wiring.ts";
import type { BenchSide, EngineEnd } from "../../../../src-core/bench/engine.ts";
import { FirmwareMachine } from "../../../../src-core/bench/engines/firmware-machine.ts";
import { InterpreterEngine } from "../../../../src-core/bench/engines/interpreter-engine.ts";
import { simulatedFirmwareChip } from "../../../../src-core/bench/engines/simulated-firmware-chip.ts";
import { sketchCore } from "../../../../src-core/bench/sketch-core/sketch-core.ts";
import { EventQueue } from "../../../../src-core/bench/time/event-queue.ts";
import { ms, us } from "../../../../src-core/bench/time/time.ts";
import type { WireName } from "../../../../src-core/bench/wires/edge.ts";
import { createWires } from "../../../../src-core/bench/wires/wires.ts";
import { chip as chipNamed } from "../../../../src-core/model/chips.ts";
import { ProgramCache } from "../../../../src-core/reader/program/program-cache.ts";
import { readProgram } from "../../../../src-core/reader/program/read-program.ts";
import { hostOfFiles } from "../../../../src-core/reader/source-host.ts";
import { grammar } from "../../reader/typed/type-source.ts";

const readGrammar = await grammar();

/** Pins 2, 3, 1 and 4 of the ATmega328P's board. The line of the bench is 1 for mark, as the pin is behind an inverting shifter. */
export const usualWiring: Wiring = {
  clock: "PD2",
  data: "PD3",
  transmit: "PD1",
  rts: "PD4",
  dtr: undefined,
  hasExternalPullUps: true,
  shifter: "inverting",
};

export interface SketchOptions {
  readonly chip?: string;
  readonly hz?: number;
  readonly wiring?: Wiring;
  readonly milliseconds?: number;
  readonly defines?: Readonly<Record<string, string>>;
  /** Runs on the same machine before the one that is told of. */
  readonly runsBefore?: number;
  /** Plans what happens on the wires; moments in microseconds. */
  readonly prepare?: (
    wires: BenchSide["wires"],
    at: (microsecond: number, happen: () => void) => void,
  ) => void;
}

export interface SketchRun {
  readonly end: EngineEnd;
  /** The source text at which it stopped. */
  readonly stoppedAt: string | undefined;
  /** Microseconds since power-up, and the new level. */
  edges(wire: WireName): readonly { readonly time: number; readonly level: number; readonly text: string }[];
  /** Bytes of 8N1 on the serial line that start within these microseconds: the time of the start bit. */
  bytes(
    baud: number,
    from?: number,
    to?: number,
  ): readonly { readonly time: number; readonly byte: number }[];
}

/** Runs a sketch with nothing else on its wires but what `prepare` plans. */
export function runSketch(text: string, options: SketchOptions = {}): SketchRun {
  const { chip: name = "atmega328p", hz = 16_000_000, wiring = usualWiring, milliseconds = 100 } = options;
  const defines = new Map(Object.entries(options.defines ?? {}));
  const program = readProgram({
    host: hostOfFiles({ "sketch.ino": text }),
    units: [{ mains: ["sketch.ino"], language: "c++", prelude: ["Arduino.h"] }],
    chip: chipNamed(name),
    clockHz: hz,
    defines,
    includePaths: [],
    grammar: readGrammar,
    cache: new ProgramCache(),
  });
  const machine = new FirmwareMachine({ program, shared: undefined, calls: undefined, runsEveryTurn: false });
  for (let before = 0; before < (options.runsBefore ?? 0); before += 1) runOnce();
  return runOnce();

  function runOnce(): SketchRun {
    const made = createChip({ name, hz });
    if (made.kind !== "chip") throw new Error(made.message);
    const queue = new EventQueue();
    const wires = createWires(queue, 0);
    let ended = false;
    queue.at(milliseconds * ms, () => {
      ended = true;
    });
    options.prepare?.(wires, (microsecond, happen) => queue.at(microsecond * us, happen));
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
    const chip = simulatedFirmwareChip(made.chip, wiring, bench);
    const core = sketchCore({ program, model: made.chip.model, clockHz: hz, chip, defines });
    const end = new InterpreterEngine({ program, chip, ...core, machine }).run(bench);
    const at = end.kind === "stopped" ? end.at : undefined;
    const edges = (wire: WireName) =>
      wires.edges
        .filter((edge) => edge.wire === wire)
        .map(({ time, level, cause }) => ({
          time: time / us,
          level,
          text: cause.at === undefined ? "" : text.slice(cause.at.first.start, cause.at.last.end),
        }));
    return {
      end,
      stoppedAt: at && text.slice(at.first.start, at.last.end),
      edges,
      bytes: (baud, from = 0, to = Number.POSITIVE_INFINITY) =>
        bytesOn(
          edges("rxd").filter(({ time }) => time >= from && time < to),
          1e6 / baud,
        ),
    };
  }
}

function bytesOn(edges: readonly { readonly time: number; readonly level: number }[], bit: number) {
  const levelAt = (time: number) => edges.findLast((edge) => edge.time <= time)?.level ?? 1;
  const bytes: { readonly time: number; readonly byte: number }[] = [];
  let free = 0;
  for (const { time, level } of edges) {
    if (level !== 0 || time < free) continue;
    const bits = Array.from({ length: 8 }, (_, index) => levelAt(time + (index + 1.5) * bit));
    if (levelAt(time + 9.5 * bit) !== 1) throw new Error(`no stop bit after ${time} us`);
    bytes.push({ time, byte: bits.reduce((value: number, each, index) => value + each * 2 ** index, 0) });
    free = time + 9.5 * bit;
  }
  return bytes;
}
