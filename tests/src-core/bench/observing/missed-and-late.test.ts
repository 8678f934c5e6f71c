import { describe, expect, test } from "vitest";
import { observationsOf } from "../../../../src-core/bench/observing/observations.ts";
import type { Pulse } from "../../../../src-core/bench/observing/pulse.ts";
import type { MouseByte } from "../../../../src-core/bench/run-record.ts";
import { MS, US } from "../verdicts/hand-made.ts";
import { place } from "../verdicts/place.ts";

/** A byte of eleven pulses, 80 us each (PS/2 Mouse/Keyboard Protocol, Device-to-Host: 60 to 100 us), `ms` after power-up. */
function byteAt(ms: number, each: (bit: number, fall: number) => Partial<Pulse>) {
  const start = ms * MS;
  const byte: MouseByte = {
    start,
    end: start + 900 * US,
    byte: 0x08,
    whole: true,
    resent: false,
    disturbed: false,
    report: 0,
  };
  const pulses = Array.from({ length: 11 }, (_, bit): Pulse => {
    const fall = start + (10 + bit * 80) * US;
    return {
      fall,
      byInterrupt: true,
      isSeen: true,
      isLate: false,
      uartLooks: 0,
      began: place(10),
      next: place(20),
      readWhileLow: true,
      readLate: undefined,
      ...each(bit, fall),
    };
  });
  return { byte, pulses };
}

const told = (...bytes: readonly ReturnType<typeof byteAt>[]) =>
  observationsOf(
    bytes.flatMap(({ pulses }) => pulses),
    bytes.map(({ byte }) => byte),
  ).map(({ kind, time, at }) => [kind, Math.round(time / US), at?.first.start]);

const right = byteAt(100, () => ({}));
const late = (fall: number): Partial<Pulse> => ({
  readWhileLow: false,
  readLate: { time: fall + 50 * US, at: place(30) },
});

describe("edges that are missed", () => {
  test("none where each was seen", () => {
    expect(told(right)).toEqual([]);
  });

  test("an interrupt that still waited when the next edge came, told where the code was then", () => {
    expect(told(byteAt(100, (bit) => ({ isSeen: bit !== 4 })))).toEqual([["edge-missed", 100_330, 20]]);
  });

  test("none of a byte that the host cut off, nor of one whose pulses are not all there", () => {
    const missed = byteAt(100, () => ({ isSeen: false }));
    expect(told({ ...missed, byte: { ...missed.byte, whole: false } })).toEqual([]);
    expect(told({ ...missed, pulses: missed.pulses.slice(1) })).toEqual([]);
  });

  test.each([
    [0, false],
    [1, false],
    [2, true],
  ])("the UART was asked %i times whether it is free: the code waited for it, %s", (uartLooks, waits) => {
    const { byte, pulses } = byteAt(100, (bit) => ({ isSeen: bit !== 4, uartLooks }));
    expect(observationsOf(pulses, [byte]).map(({ waitsForUart }) => waitsForUart)).toEqual([waits]);
  });

  const polled: Partial<Pulse> = { byInterrupt: false };
  const elsewhere: Partial<Pulse> = { ...polled, isSeen: false, readWhileLow: false };

  test("somebody who looks at the clock himself was elsewhere for a bit", () => {
    expect(told(byteAt(100, (bit) => (bit === 3 ? elsewhere : polled)))).toEqual([
      ["edge-missed", 100_250, 20],
    ]);
  });

  test("the stop bit need not be waited for", () => {
    expect(told(byteAt(100, (bit) => (bit === 10 ? elsewhere : polled)))).toEqual([]);
  });

  test("a whole byte passed, after one that was looked at", () => {
    const whole = byteAt(200, () => elsewhere);
    expect(
      told(
        byteAt(100, () => polled),
        whole,
      ),
    ).toHaveLength(10);
    // A part of the chip may listen where the code never looks.
    expect(told(whole)).toEqual([]);
  });
});

describe("bits that are read too late", () => {
  test("bit after bit: the code reads at the wrong time", () => {
    const kinds = told(byteAt(100, (_bit, fall) => late(fall)));
    expect(kinds).toHaveLength(9);
    // The first data bit is the second pulse.
    expect(kinds[0]).toEqual(["sampled-wrong", 100_140, 30]);
  });

  test("one of them: what ran when the clock fell kept the handler from it", () => {
    expect(told(byteAt(100, (bit, fall) => (bit === 5 ? late(fall) : {})))).toEqual([
      ["edge-missed", 100_410, 10],
    ]);
  });

  test("a look at the line at rest is not taken for a bit", () => {
    const looks = byteAt(100, (bit, fall) => ({ byInterrupt: false, ...(bit === 5 ? late(fall) : {}) }));
    expect(told(looks).filter(([kind]) => kind === "sampled-wrong")).toEqual([]);
  });

  test("data read while the clock is low is right, whatever is read afterwards", () => {
    expect(told(byteAt(100, (_bit, fall) => ({ ...late(fall), readWhileLow: true })))).toEqual([]);
  });
});
