import { describe, expect, test } from "vitest";
import { Bench } from "../../../../src-core/bench/bench.ts";
import type { BenchSide, Engine } from "../../../../src-core/bench/engine.ts";
import { mouseNamed } from "../../../../src-core/bench/mice/profiles.ts";
import { pcProfiles } from "../../../../src-core/bench/pcs/pc-profiles.ts";
import { sampleStrokes } from "../../../../src-core/bench/strokes/strokes.ts";
import { EventQueue } from "../../../../src-core/bench/time/event-queue.ts";
import { ms, second } from "../../../../src-core/bench/time/time.ts";
import { layouts } from "../../../../src-core/model/report-layouts.ts";
import { DatasheetHost } from "./datasheet-host.ts";

const byAdapter = { party: "firmware", at: undefined } as const;

/**
 * An adapter that enables reports after each AA 00 (or only after the first), answers the PC with M, and reports nothing. M at 1200
 * baud, 7N1 is 4D hex from the lowest bit: start 0, 1011001, stop 1 (mouse(4)).
 */
class SmallAdapter implements Engine {
  readonly #enables: number;

  constructor(enables: number) {
    this.#enables = enables;
  }

  run(bench: BenchSide) {
    const own = new EventQueue();
    const { wires } = bench;
    const host = new DatasheetHost(own, wires);
    wires.rts.onEdge(({ level }) => {
      if (level === 1) return;
      for (const [index, bit] of [0, 1, 0, 1, 1, 0, 0, 1, 1].entries()) {
        own.after(14 * ms + Math.round((index * second) / 1200), () =>
          wires.rxd.drive(bit === 1 ? 1 : 0, byAdapter),
        );
      }
    });
    let enabled = 0;
    while (!bench.ended) {
      const time = Math.min(bench.next, own.next);
      // The host hears of an edge in its own time, at most a picosecond late, and acts in the bench's.
      own.advanceTo(time - 1);
      bench.advanceTo(time);
      own.advanceTo(time);
      const isAnnounced = host.bytes().slice(-2).join() === "170,0";
      if (isAnnounced && enabled < this.#enables) {
        enabled += 1;
        host.forget();
        own.after(5 * ms, () => host.send(0xf4));
      }
    }
    return { kind: "ended" } as const;
  }
}

function runWith(mouseName: string, strokeName: string, enables: number) {
  const mouse = mouseNamed(mouseName);
  const pc = pcProfiles[0];
  const stroke = sampleStrokes.find(({ name }) => name === strokeName);
  if (mouse === undefined || pc === undefined || stroke === undefined) throw new Error("no such thing");
  const bench = new Bench({
    mouse,
    pc,
    stroke,
    layout: layouts["two-button"],
    baud: 1200,
    scale: 1,
    seed: 1,
  });
  return bench.run(new SmallAdapter(enables)).run;
}

describe("a mouse to which something happens in mid-stroke", () => {
  test.each(["restarts-itself", "unplugged-and-plugged-again"])(
    "%s: moves again when it is heard",
    (mouse) => {
      for (const stroke of ["click", "slow-sideways", "nudge"]) {
        const run = runWith(mouse, stroke, 2);
        const [, again] = run.mouse.happenings.filter(({ kind }) => kind === "self-test");
        expect(again, stroke).toBeDefined();
        const whole = run.mouse.reports.filter(({ sentAt }) => sentAt !== undefined);
        const before = whole.filter(({ sampled }) => sampled < (again?.time ?? 0)).length;
        expect(before, stroke).toBe(3);
        // The whole stroke: a click of three buttons is six reports, a nudge five.
        expect(whole.length - before, stroke).toBeGreaterThanOrEqual(5);
      }
    },
  );

  test("restarts-itself: the run is long enough to see that the firmware never makes it report again", () => {
    const run = runWith("restarts-itself", "click", 1);
    const [, again] = run.mouse.happenings.filter(({ kind }) => kind === "self-test");
    expect(again).toBeDefined();
    // 300 ms of self-test, then the three seconds that the model gives (common practice).
    expect(run.ended - (again?.time ?? 0)).toBeGreaterThan(3.3 * second);
    expect(run.mouse.reports.every(({ sampled }) => sampled < (again?.time ?? 0))).toBe(true);
  });

  test("plain: the stroke is made once", () => {
    const run = runWith("plain", "click", 1);
    expect(run.mouse.reports).toHaveLength(6);
  });
});
