import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { availableParallelism } from "node:os";
import { Bench } from "../../src-core/bench/bench.ts";
import { createChip } from "../../src-core/bench/chip/chip.ts";
import { ImageEngine } from "../../src-core/bench/engines/image-engine.ts";
import { mice, mouseNamed } from "../../src-core/bench/mice/profiles.ts";
import { pcNamed, pcProfiles } from "../../src-core/bench/pcs/pc-profiles.ts";
import type { Stroke } from "../../src-core/bench/strokes/stroke.ts";
import { sampleStrokes } from "../../src-core/bench/strokes/strokes.ts";
import { second } from "../../src-core/bench/time/time.ts";
import { findProjects } from "../../src-core/project/find-projects.ts";
import { hostOfFiles } from "../../src-core/reader/source-host.ts";
import type { Grammar } from "../../src-core/reader/syntax/grammar/grammar.ts";
import { ProjectReader, type ProjectReading } from "../../src-core/service/project-reading.ts";
import { boardOf, recordRun } from "../../src-core/service/simulation/run-on-bench.ts";
import { vocabulary } from "../../src-core/service/vocabulary.ts";
import { compileSample, compileSketch } from "../oracle/bench/compile-image.ts";
import { isInstalled } from "./is-installed.ts";

const hz = 16_000_000;
const chip = "atmega328p";
/** Without it the sketch cannot be compiled. */
const coreFolder = "/usr/share/arduino/hardware/arduino/avr";
const samples = [
  { name: "ferry-c", needs: "avr-gcc", compile: () => compileSample("ferry-c", chip, hz) },
  {
    name: "ferry-sketch",
    needs: coreFolder,
    compile: () => compileSketch("sample-workspace/ferry-sketch", hz),
  },
] as const;

/** How much is measured. */
export interface BenchAmount {
  readonly strokes: readonly string[];
  /** Runs of the sources with each stroke; the fastest counts. */
  readonly rounds: number;
  /** Which part of the default matrix is run, as `--shard` has it; undefined for all of it. */
  readonly shard: string | undefined;
}

export const everyStroke: readonly string[] = sampleStrokes.map(({ name }) => name);

/**
 * Whole firmwares on the bench, as tables: virtual seconds in a real one for each sample and stroke, beside the compiled
 * image on the instructions of avr8js, and how long the default matrix of each sample takes. `leftOut` names what is
 * not there.
 */
export async function benchCosts(
  grammar: Grammar,
  amount: BenchAmount,
): Promise<{ readonly text: string; readonly leftOut: readonly string[] }> {
  const leftOut = samples.filter(({ needs }) => !isThere(needs)).map(({ needs }) => needs);
  let text = "";
  for (const { name, needs, compile } of samples) {
    const image = isThere(needs) ? await compile() : undefined;
    text += strokeTable(name, readSample(grammar, name), image, amount);
  }
  for (const { name } of samples) text += matrixTime(name, amount.shard);
  return {
    text: text + leftOut.map((each) => `${each} is not there: its column is left out\n`).join(""),
    leftOut,
  };
}

function isThere(what: string): boolean {
  return what.startsWith("/") ? existsSync(what) && isInstalled("avr-gcc") : isInstalled(what);
}

function strokeTable(
  name: string,
  reading: ProjectReading,
  image: Uint16Array | undefined,
  { strokes, rounds }: BenchAmount,
): string {
  const among = strokes.map((each) => found(sampleStrokes.find((stroke) => stroke.name === each)));
  const sources = (stroke: Stroke): number => recordRun(reading, around(stroke)).run.ended;
  // Generated code is compiled while it runs: a few runs come before the first that is measured.
  for (const stroke of among.slice(0, rounds)) sources(stroke);
  const rows = among.map((stroke) => {
    const speeds = Array.from({ length: rounds }, () => speedOf(() => sources(stroke)));
    const interpreted = Math.max(...speeds);
    const compiled = image && speedOf(() => runImage(reading, image, stroke));
    return { stroke: stroke.name, interpreted, compiled };
  });
  const lines = rows.map(
    ({ stroke, interpreted, compiled }) =>
      `${stroke.padEnd(firstWidth)}${times(interpreted)}${compiled === undefined ? "" : times(compiled) + times(interpreted / compiled)}`,
  );
  const heads = ["from the sources", ...(image === undefined ? [] : ["image on avr8js", "ratio"])];
  return `
Virtual seconds in a real one, ${name}, mouse ${usualMouse.name}, PC ${usualPc.name}
${"".padEnd(firstWidth)}${heads.map((head) => head.padStart(columnWidth)).join("")}
${lines.join("\n")}
`;
}

const firstWidth = 20;
const columnWidth = 18;

function times(value: number): string {
  return `${value.toFixed(1)} x`.padStart(columnWidth);
}

const usualMouse = found(mouseNamed(mice[0]?.name ?? ""));
const usualPc = found(pcNamed(pcProfiles[0]?.name ?? ""));
const around = (stroke: Stroke) => ({ mouse: usualMouse, pc: usualPc, stroke, seed: 1 });

/** Virtual seconds that `run` makes, given in picoseconds, in each real one. */
function speedOf(run: () => number): number {
  const start = performance.now();
  const virtual = run() / second;
  return virtual / ((performance.now() - start) / 1000);
}

/** The moment at which the run ended. */
function runImage(reading: ProjectReading, program: Uint16Array, stroke: Stroke): number {
  const { wiring, layout } = boardOf(reading);
  const made = createChip({ name: chip, hz, program });
  if (made.kind !== "chip") throw new Error(made.message);
  const bench = new Bench({ ...around(stroke), layout, baud: 1200, scale: 1 });
  return bench.run(new ImageEngine(made.chip, wiring)).run.ended;
}

function readSample(grammar: Grammar, name: string): ProjectReading {
  const folder = `sample-workspace/${name}`;
  const files = readdirSync(folder).map((file) => [file, readFileSync(`${folder}/${file}`, "utf8")] as const);
  const host = hostOfFiles(Object.fromEntries(files));
  const [project] = findProjects(host, ".", { vocabulary, startName: name });
  return new ProjectReader(host, grammar).read(found(project));
}

/** What `edgewise matrix` of the same build takes from its start to its report. */
function matrixTime(name: string, shard: string | undefined): string {
  const options = ["matrix", `sample-workspace/${name}`, ...(shard === undefined ? [] : ["--shard", shard])];
  const start = performance.now();
  const { status, stdout, stderr } = spawnSync(process.execPath, ["dist/edgewise.js", ...options], {
    encoding: "utf8",
  });
  const seconds = (performance.now() - start) / 1000;
  if (status !== 0) throw new Error(`edgewise ${options.join(" ")} ended with ${status}\n${stdout}${stderr}`);
  const cores = availableParallelism();
  const last = stdout.trimEnd().split("\n").at(-1) ?? "";
  return `
The default matrix of ${name}${shard === undefined ? "" : `, part ${shard}`}, on ${cores} cores: ${seconds.toFixed(1)} s (${last})
`;
}

function found<T>(value: T | undefined): T {
  if (value === undefined) throw new Error("no such name");
  return value;
}
