import { Bench } from "../bench/bench.ts";
import { createChip } from "../bench/chip/chip.ts";
import { wiringOf } from "../bench/chip/wiring.ts";
import type { EngineEnd } from "../bench/engine.ts";
import { InterpreterEngine } from "../bench/engines/interpreter-engine.ts";
import { simulatedFirmwareChip } from "../bench/engines/simulated-firmware-chip.ts";
import { mice } from "../bench/mice/profiles.ts";
import { pcProfiles } from "../bench/pcs/pc-profiles.ts";
import type { Run } from "../bench/run-record.ts";
import { sketchCore } from "../bench/sketch-core/sketch-core.ts";
import { strokesFor } from "../bench/strokes/from-settings.ts";
import { judgeRun } from "../bench/verdicts/judge-run.ts";
import type { ReportValues } from "../model/layouts/values.ts";
import { quantity } from "../model/quantities.ts";
import { layoutNamed } from "../model/report-layouts.ts";
import { nearestNames } from "../near-names.ts";
import { visibleRange } from "../reader/tokens.ts";
import type {
  Named,
  PathPoint,
  SimulatedRun,
  SimulationChoice,
  SimulationResult,
} from "../simulation-result.ts";
import type { ProjectReading } from "./project-reading.ts";

/** Runs a firmware between a virtual mouse and a virtual PC. Never throws. */
export function simulateReading(
  { project, facts }: ProjectReading,
  choice: SimulationChoice,
): SimulationResult {
  try {
    const stroke = chosen("stroke", choice.stroke, strokesFor(project.settings.simulate), "circle");
    const mouse = chosen("mouse", choice.mouse, mice);
    const pc = chosen("PC", choice.pc, pcProfiles);
    const { program, wires, board } = facts;
    const layout = layoutNamed(wires.serial.report?.value ?? "");
    if (program.chip === undefined)
      throw new Missing(
        "the chip is not known; say it in a note such as `@wire board atmega328p clock=16MHz`",
      );
    if (board.clock === undefined)
      throw new Missing("the clock is not known; say it in the note `@wire board`");
    if (layout?.side !== "serial")
      throw new Missing("the layout of the reports is not known; say `report=` in the note `@wire serial`");
    const made = createChip({ name: program.chip.name, hz: board.clock.hz });
    if (made.kind === "not-simulated") throw new Missing(made.message);
    const wiring = wiringOf(made.chip.model, wires);
    if (wiring.kind === "unknown") throw new Missing(wiring.message);
    const baud = wires.serial.baud?.value ?? quantity("serial.baud")?.typical ?? 0;
    const bench = new Bench({ mouse, pc, stroke, layout, baud, scale: 1, seed: choice.seed });
    const chip = simulatedFirmwareChip(made.chip, wiring.wiring, bench);
    const core = sketchCore({ program, model: made.chip.model, clockHz: board.clock.hz, chip });
    const engine = new InterpreterEngine({ program, chip, ...core });
    const { run, end, strokeBegan } = bench.run(engine, () => chip.place);
    const simulated: SimulatedRun = {
      stroke: named(stroke),
      mouse: named(mouse),
      pc: named(pc),
      layout: layout.name,
      seed: choice.seed,
      ended: run.ended,
      strokeBegan: strokeBegan !== undefined,
      verdict: judgeRun(run),
      stopped: stopOf(end),
      notSimulated: made.chip.core.notSimulated.map(({ what }) => what),
      ...pathsOf(run),
      edges: run.edges.map(({ time, wire, level }) => ({ time, wire, level })),
    };
    return { kind: "run", run: simulated };
  } catch (problem) {
    if (problem instanceof Missing) return { kind: "cannot", message: problem.message };
    const why = problem instanceof Error ? problem.message : String(problem);
    return { kind: "cannot", message: `the firmware could not be run: ${why}` };
  }
}

/** Something that has to be said before a firmware can be run. */
class Missing extends Error {}

function chosen<Kind extends Named>(
  what: string,
  name: string | undefined,
  among: readonly Kind[],
  usual: string | undefined = among[0]?.name,
): Kind {
  const found = among.find((each) => each.name === (name ?? usual));
  if (found !== undefined) return found;
  const names = among.map((each) => each.name);
  const [near] = nearestNames(name ?? "", names, 1);
  const hint = near === undefined ? `there is ${names.join(", ")}` : `did you mean ${near}?`;
  throw new Missing(`there is no ${what} "${name}"; ${hint}`);
}

function named({ name, title }: Named): Named {
  return { name, title };
}

function stopOf(end: EngineEnd): SimulatedRun["stopped"] {
  if (end.kind === "ended") return undefined;
  const { message, at } = end;
  if (at === undefined) return { message, span: undefined };
  const { file, start, end: to } = visibleRange(at.first, at.last);
  return { message, span: { file, start, end: to } };
}

function pathsOf({ mouse, pc, wanted }: Run): Pick<SimulatedRun, "sent" | "received"> {
  const growsUp = wanted.layout.movements.find(({ name }) => name === "y")?.positive === "up";
  return {
    sent: pathOf(
      mouse.reports.map(({ values }) => values),
      1,
    ),
    received: pathOf(
      pc.reports.map(({ values }) => values),
      growsUp ? 1 : -1,
    ),
  };
}

function pathOf(reports: readonly ReportValues[], up: 1 | -1): readonly PathPoint[] {
  let x = 0;
  let y = 0;
  const points: PathPoint[] = [{ x, y }];
  for (const values of reports) {
    x += values.x ?? 0;
    y += up * (values.y ?? 0);
    points.push({ x, y });
  }
  return points;
}
