import { Bench, type BenchRun } from "../../bench/bench.ts";
import { type Chip, createChip } from "../../bench/chip/chip.ts";
import { type Wiring, wiringOf } from "../../bench/chip/wiring.ts";
import type { EngineEnd } from "../../bench/engine.ts";
import { type CodeRecord, CodeTrace } from "../../bench/engines/code-trace.ts";
import { FirmwareMachine } from "../../bench/engines/firmware-machine.ts";
import { InterpreterEngine } from "../../bench/engines/interpreter-engine.ts";
import { simulatedFirmwareChip } from "../../bench/engines/simulated-firmware-chip.ts";
import type { MouseProfile } from "../../bench/mice/profile.ts";
import {
  type CodePlaces,
  collectingPlace,
  loopPlaces,
  mainPlace,
} from "../../bench/observing/code-places.ts";
import { FirmwareWatch } from "../../bench/observing/firmware-watch.ts";
import type { PcProfile } from "../../bench/pcs/pc-profile.ts";
import { sketchCore } from "../../bench/sketch-core/sketch-core.ts";
import type { Stroke } from "../../bench/strokes/stroke.ts";
import type { Time } from "../../bench/time/time.ts";
import { judgeRun } from "../../bench/verdicts/judge-run.ts";
import type { Facts } from "../../facts/facts.ts";
import type { RunInBrief } from "../../matrix-result.ts";
import type { ReportLayout } from "../../model/layouts/layout.ts";
import { quantity } from "../../model/quantities.ts";
import { layoutNamed } from "../../model/report-layouts.ts";
import { visibleRange } from "../../reader/tokens.ts";
import type { At, Variable } from "../../reader/typed/nodes.ts";
import type { Field, Type } from "../../reader/types/types.ts";
import type { Named, SimulatedRun } from "../../simulation-result.ts";
import type { ProjectReading } from "../project-reading.ts";
import { detailsOf } from "./details/details-of.ts";
import { pathsOf } from "./details/paths.ts";
import { Missing } from "./missing.ts";
import { undisturbedPlaces } from "./undisturbed-places.ts";

/** What stands around the firmware in one run. */
export interface Around {
  readonly mouse: MouseProfile;
  readonly pc: PcProfile;
  readonly stroke: Stroke;
  /** Any whole number. */
  readonly seed: number;
  /** Asked now and then; true ends the run where it is. */
  readonly isUnwanted?: (now: Time) => boolean;
}

/** Runs the firmware once. Throws `Missing`, and whatever the firmware makes the engine throw. */
export function runOnBench(reading: ProjectReading, around: Around): RunInBrief {
  return inBrief(recordRun(reading, around), around);
}

/** The same with all that a picture of the run shows; to tell which function runs when takes its time. */
export function runInDetail(reading: ProjectReading, around: Around): SimulatedRun {
  const recorded = recordRun(reading, around, { tracesCode: true });
  const { run, code } = recorded;
  return { ...inBrief(recorded, around), ...pathsOf(run), details: detailsOf(run, code) };
}

function inBrief(
  { chip, run, end, strokeBegan }: RecordedRun,
  { mouse, pc, stroke, seed }: Around,
): RunInBrief {
  return {
    stroke: named(stroke),
    mouse: named(mouse),
    pc: named(pc),
    layout: run.wanted.layout.name,
    seed,
    ended: run.ended,
    strokeBegan: strokeBegan !== undefined,
    verdict: judgeRun(run),
    stopped: stopOf(end),
    notSimulated: chip.core.notSimulated.map(({ what }) => what),
  };
}

/** All that was recorded of a run, and the chip as it is behind it. */
export interface RecordedRun extends BenchRun {
  readonly chip: Chip;
  /** Empty where it was not asked for. */
  readonly code: CodeRecord;
}

/** How a run is made; it is the same to the last edge either way. */
export interface Recording {
  /** As `Clock` has it. */
  readonly runsEveryTurn?: boolean;
  /** Which function runs when is recorded, too. */
  readonly tracesCode?: boolean;
}

/** The run of `runOnBench` as verdicts see it. */
export function recordRun(
  reading: ProjectReading,
  { mouse, pc, stroke, seed, isUnwanted }: Around,
  { runsEveryTurn = false, tracesCode = false }: Recording = {},
): RecordedRun {
  const { made, clockHz, wiring, layout } = boardOf(reading);
  const { program, wires } = reading.facts;
  const baud = wires.serial.baud?.value ?? quantity("serial.baud")?.typical ?? 0;
  const scale = wires.serial.scale?.value ?? 1;
  const bench = new Bench({ mouse, pc, stroke, layout, baud, scale, seed, isUnwanted });
  const watch = new FirmwareWatch(made, wiring, bench.wires, placesOf(reading.facts));
  const chip = simulatedFirmwareChip(made, wiring, bench, watch);
  const core = sketchCore({ program, model: made.model, clockHz, chip, defines: reading.project.defines });
  const shared = sharedVariables(reading.facts);
  const machine = runsEveryTurn || tracesCode ? undefined : machineOf(reading, shared);
  const torn = (at: At | undefined): void => watch.tear(at);
  const trace = new CodeTrace((untold) => made.core.clock.timeOf(chip.cycles + untold));
  const engine = new InterpreterEngine({
    program,
    chip,
    shared,
    torn,
    ...core,
    runsEveryTurn,
    trace: tracesCode ? trace : undefined,
    machine,
  });
  return { ...bench.run(engine, watch), chip: made, code: trace.record };
}

/** For as long as a reading is kept. */
const machines = new WeakMap<ProjectReading, FirmwareMachine>();

/** The machine that all runs of a reading share, one after the other. */
function machineOf(reading: ProjectReading, shared: readonly Variable[]): FirmwareMachine {
  const known = machines.get(reading);
  if (known !== undefined) return known;
  const { program } = reading.facts;
  const made = new FirmwareMachine({ program, shared, calls: undefined, runsEveryTurn: false });
  machines.set(reading, made);
  return made;
}

/** A new chip, how it is wired, and the layout of its reports. Throws `Missing` for what the project does not say. */
export function boardOf({ project, facts: { program, wires, board } }: ProjectReading): {
  readonly made: Chip;
  readonly clockHz: number;
  readonly wiring: Wiring;
  readonly layout: ReportLayout;
} {
  const [broken] = project.problems;
  // What is faulty there was left out; the run would be another than the one that was meant.
  if (broken !== undefined) throw new Missing(`edgewise.json: ${broken.message}`);
  const layout = layoutNamed(wires.serial.report?.value ?? "");
  if (program.chip === undefined)
    throw new Missing("the chip is not known; say it in a note such as `@wire board atmega328p clock=16MHz`");
  if (board.clock === undefined)
    throw new Missing("the clock is not known; say it in the note `@wire board`");
  if (layout?.side !== "serial")
    throw new Missing("the layout of the reports is not known; say `report=` in the note `@wire serial`");
  const made = createChip({ name: program.chip.name, hz: board.clock.hz });
  if (made.kind === "not-simulated") throw new Missing(made.message);
  const wiring = wiringOf(made.chip.model, wires);
  if (wiring.kind === "unknown") throw new Missing(wiring.message);
  return { made: made.chip, clockHz: board.clock.hz, wiring: wiring.wiring, layout };
}

/** Of facts that were run before. */
const places = new WeakMap<Facts, CodePlaces>();

/** What the source says of itself. */
function placesOf(facts: Facts): CodePlaces {
  const known = places.get(facts);
  if (known !== undefined) return known;
  const { program, wires, ps2, board } = facts;
  const found = {
    receives: wires.ps2.data?.span ?? wires.ps2.clock?.span,
    collects: collectingPlace(program),
    rts: wires.serial.rts?.span,
    main: mainPlace(program),
    loops: loopPlaces(program),
    undisturbed: undisturbedPlaces(board.shared),
    commands: ps2.sequences.flatMap(({ bytes }) => bytes.map(({ byte, call }) => ({ byte, span: call }))),
  };
  places.set(facts, found);
  return found;
}

/** Variables at file level that interrupt handlers and other code use, whole or a member of them. */
function sharedVariables({ program, board }: Facts): readonly Variable[] {
  return board.shared.flatMap(({ object }) => {
    if (object.kind === "variable") return [object.variable];
    return program.variables.filter(({ type }) => hasMember(type, object.field));
  });
}

function hasMember(type: Type, field: Field): boolean {
  if (type.kind === "array") return hasMember(type.of, field);
  if (type.kind !== "record") return false;
  const { fields, bases } = type.record;
  return (
    fields.some((each) => each.name === field.name || hasMember(each.type, field)) ||
    bases.some(({ record }) => hasMember({ kind: "record", record }, field))
  );
}

export function named({ name, title }: Named): Named {
  return { name, title };
}

/** Where the code ended by itself, and why. */
export function stopOf(end: EngineEnd): SimulatedRun["stopped"] {
  if (end.kind === "ended") return undefined;
  const { message, at } = end;
  if (at === undefined) return { message, span: undefined };
  const { file, start, end: to } = visibleRange(at.first, at.last);
  return { message, span: { file, start, end: to } };
}
