import { second, type Time } from "../../bench/time/time.ts";
import type { NotUnderstood, Span } from "../../finding.ts";
import type { FirmwareRun } from "../../firmware-run.ts";
import type { SimulatedRun } from "../../simulation-result.ts";
import type { ProjectReading } from "../project-reading.ts";
import { Missing, orWhyNot } from "../simulation/missing.ts";
import { type Around, boardOf, recordRun, stopOf } from "../simulation/run-on-bench.ts";
import { cellsFor } from "./cells.ts";
import { firmwareRun } from "./firmware-run.ts";
import { isWholeFirmware } from "./purpose.ts";

/** What whole runs of a firmware came to. */
export interface WholeRuns {
  readonly runs: readonly FirmwareRun[];
  /** What could not be run, or not to its end; each thing once, `span` undefined where there is no place for it. */
  readonly notRun: readonly (Omit<NotUnderstood, "span"> & { readonly span: Span | undefined })[];
  /** All runs were made that there are to make. */
  readonly complete: boolean;
}

/** Of virtual time, for all runs together. What works needs half of it. */
const budget: Time = 60 * second;

const nothing: WholeRuns = { runs: [], notRun: [], complete: false };

/** Runs a firmware that means to be a whole one with a few mice, at a few PCs. Never throws; undefined when cancelled. */
export function runWhole(
  reading: ProjectReading,
  cancelled: (() => boolean) | undefined,
): WholeRuns | undefined {
  if (!isWholeFirmware(reading.facts)) return nothing;
  const planned = orWhyNot(() => {
    const { wiring, layout } = boardOf(reading);
    // Whoever is not told that a PC asks who is there cannot answer.
    if (wiring.rts === undefined && wiring.dtr === undefined)
      throw new Missing(
        "which pin hears RTS or DTR of the PC is not known; say it in the note `@wire serial`",
      );
    return { kind: "cells", cells: cellsFor(reading.project.settings.simulate, layout) } as const;
  });
  if (planned.kind === "cannot") {
    const message = `the firmware is not run with virtual mice and PCs: ${planned.message}`;
    return { ...nothing, notRun: [{ span: undefined, message }] };
  }
  return new Runner(reading, cancelled).run(planned.cells);
}

class Runner {
  readonly #reading: ProjectReading;
  readonly #cancelled: () => boolean;
  readonly #runs: FirmwareRun[] = [];
  readonly #notRun = new Map<string, WholeRuns["notRun"][number]>();
  /** Virtual time that went by in the runs before. */
  #spent: Time = 0;

  constructor(reading: ProjectReading, cancelled: (() => boolean) | undefined) {
    this.#reading = reading;
    this.#cancelled = cancelled ?? (() => false);
  }

  run(cells: readonly Around[]): WholeRuns | undefined {
    let made = 0;
    for (const cell of cells) {
      const goesOn = this.#runOne(cell);
      if (this.#cancelled()) return undefined;
      if (!goesOn) break;
      made += 1;
    }
    // Where something is wrong already, the rest is run when that is mended.
    if (this.#spent >= budget && this.#runs.every(({ faults }) => faults.length === 0)) {
      const message = `the firmware was run for ${budget / second} s of virtual time and did not come to the end of its runs: ${cells.length - made} of ${cells.length} were left out`;
      this.#say(undefined, message);
    }
    return {
      runs: this.#runs,
      notRun: [...this.#notRun.values()],
      complete: made === cells.length && this.#notRun.size === 0,
    };
  }

  /** False where further runs would say the same. */
  #runOne({ mouse, pc, stroke, seed }: Around): boolean {
    const left = budget - this.#spent;
    const isUnwanted = (now: Time): boolean => now >= left || this.#cancelled();
    const ran = orWhyNot(
      () =>
        ({
          kind: "ran",
          ...recordRun(this.#reading, { mouse, pc, stroke, seed, isUnwanted }),
        }) as const,
    );
    if (ran.kind === "cannot") {
      this.#say(undefined, ran.message);
      return false;
    }
    const { run, end, strokeBegan } = ran;
    this.#spent += run.ended;
    if (this.#spent >= budget || this.#cancelled()) return false;
    const stopped = stopOf(end);
    const made = firmwareRun(this.#reading, { mouse, pc, stroke }, ran);
    if (stopped !== undefined) this.#stopped(made, stopped);
    this.#runs.push(made);
    return this.#runs.length > 1 || (strokeBegan !== undefined && stopped === undefined);
  }

  #stopped(
    { mouse, pc, stroke }: Pick<FirmwareRun, "mouse" | "pc" | "stroke">,
    stop: NonNullable<SimulatedRun["stopped"]>,
  ): void {
    const key = JSON.stringify([stop.span, stop.message]);
    if (this.#notRun.has(key)) return;
    const cell = `mouse ${mouse.name}, PC ${pc.name}, stroke ${stroke.name}`;
    const message = `the firmware cannot be run further than here (${cell}): ${stop.message}`;
    this.#notRun.set(key, { span: stop.span, message });
  }

  #say(span: Span | undefined, message: string): void {
    this.#notRun.set(message, { span, message });
  }
}
