import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { mouseNamed } from "../../../src-core/bench/mice/profiles.ts";
import { pcNamed } from "../../../src-core/bench/pcs/pc-profiles.ts";
import { sampleStrokes } from "../../../src-core/bench/strokes/strokes.ts";
import { findProjects } from "../../../src-core/project/find-projects.ts";
import { hostOfFiles } from "../../../src-core/reader/source-host.ts";
import { ProjectReader } from "../../../src-core/service/project-reading.ts";
import { recordRun } from "../../../src-core/service/simulation/run-on-bench.ts";
import { vocabulary } from "../../../src-core/service/vocabulary.ts";
import { loadGrammar } from "../reader/syntax/load-grammar.ts";

const grammar = await loadGrammar();

function found<T>(value: T | undefined): T {
  if (value === undefined) throw new Error("no such name");
  return value;
}

function readingOf(sample: string) {
  const folder = `sample-workspace/${sample}`;
  const files = readdirSync(folder).map((file) => [file, readFileSync(`${folder}/${file}`, "utf8")] as const);
  const host = hostOfFiles(Object.fromEntries(files));
  const [project] = findProjects(host, ".", { vocabulary, startName: sample });
  return new ProjectReader(host, grammar).read(found(project));
}

/** Mouse, PC and stroke: a little of everything that a firmware waits for. */
const cells = [
  ["plain", "rts-toggle", "nudge"],
  ["wheel", "plug-and-play", "all-at-once"],
  ["jittering-clock", "dtr-rts-toggle", "click"],
  ["restarts-itself", "hurried", "circle"],
  ["glitch-on-clock", "second-reset", "fast-diagonals"],
  ["asks-for-resend", "patient", "flick"],
] as const;

// The reference is the same run with each turn of each loop run, on a machine that ran nothing before: nothing that is recorded
// may differ, to the last event.
describe.each(["ferry-c", "ferry-sketch"])("turns that are skipped in %s", (sample) => {
  const reading = readingOf(sample);

  test.each(cells)("change nothing with the mouse %s at the PC %s and the stroke %s", (mouse, pc, stroke) => {
    const around = {
      mouse: found(mouseNamed(mouse)),
      pc: found(pcNamed(pc)),
      stroke: found(sampleStrokes.find(({ name }) => name === stroke)),
      seed: 3,
    };
    const skipping = recordRun(reading, around);
    const turning = recordRun(reading, around, { runsEveryTurn: true });
    expect(skipping.chip.cpu.cycles).toBe(turning.chip.cpu.cycles);
    expect(skipping.chip.core.notSimulated).toEqual(turning.chip.core.notSimulated);
    expect(skipping.end).toEqual(turning.end);
    expect(skipping.run.edges.length).toBeGreaterThan(0);
    expect(skipping.run).toEqual(turning.run);
  });
});
