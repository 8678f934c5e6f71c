import { describe, expect, test } from "vitest";
import type { Answer } from "../../../../src-core/bench/pcs/pc-record.ts";
import type { ReceivedByte } from "../../../../src-core/bench/pcs/uart/received-byte.ts";
import { UartReceiver } from "../../../../src-core/bench/pcs/uart/uart-receiver.ts";
import type { Run } from "../../../../src-core/bench/run-record.ts";
import { EventQueue } from "../../../../src-core/bench/time/event-queue.ts";
import { judgeRun } from "../../../../src-core/bench/verdicts/judge-run.ts";
import { serialBits } from "../../../../src-core/bench/verdicts/serial/serial-bits.ts";
import type { Edge } from "../../../../src-core/bench/wires/edge.ts";
import { createWires } from "../../../../src-core/bench/wires/wires.ts";
import { layouts } from "../../../../src-core/model/report-layouts.ts";
import { drive, send, sevenOne } from "../pcs/sender.ts";
import { edge, faults, handMade, MS, US } from "./hand-made.ts";
import { place } from "./place.ts";

const bitPlace = place(40);

/** What a UART at the wire makes of what is sent. */
function line(fill: (queue: EventQueue, rxd: ReturnType<typeof createWires>["rxd"]) => void): {
  readonly edges: readonly Edge[];
  readonly bytes: readonly ReceivedByte[];
} {
  const queue = new EventQueue();
  const wires = createWires(queue, 0);
  const bytes: ReceivedByte[] = [];
  new UartReceiver(queue, wires.rxd, { baud: 1200, dataBits: 7 }, (byte) => bytes.push(byte));
  fill(queue, wires.rxd);
  queue.advanceTo(900 * MS);
  return { edges: wires.edges, bytes };
}

function received(fill: Parameters<typeof line>[0]): Partial<Run> {
  const { edges, bytes } = line(fill);
  return { edges, pc: { ...handMade({}).pc, bytes } };
}

/** 0x2a, 0x55, 0x00, 0x7f at so many per cent of 1200 bit/s. */
const at = (percent: number) =>
  received(
    (queue, rxd) =>
      void send(
        queue,
        rxd,
        10 * MS,
        [0x2a, 0x55, 0x00, 0x7f],
        { ...sevenOne, bit: 1e14 / (1200 * percent) },
        bitPlace,
      ),
  );

describe("bit times", () => {
  test("every bit between two edges is measured", () => {
    // 4D, low bit first, is 1 0 1 1 0 0 1: start, 1, 0, 11, 00, and 1 that goes over into the stop bit.
    const { edges, bytes } = line((queue, rxd) => void send(queue, rxd, 10 * MS, [0x4d, 0x4d]));
    const bits = [...serialBits(edges, bytes, { bit: 1e12 / 1200, own: 1e12 / 1200 }, 7)];
    expect(bits.map((each) => each.bits)).toEqual([1, 1, 1, 2, 2, 1, 1, 1, 2, 2]);
    for (const { length, bits: count } of bits) expect(length / count).toBeCloseTo(833_333_333.3, -3);
    expect(bits.filter(({ isFirst }) => isFirst).length).toBe(2);
  });

  // ATmega328P datasheet 7810C, Table 19-2: 2.0 % recommended for seven bits.
  test.each([98.1, 100, 101.9])("a rate of %s %% is right", (percent) => {
    expect(faults(at(percent))).toEqual([]);
  });

  test.each([
    [97, 859.11],
    [103, 809.06],
  ])("a rate of %s %% is wrong: %s us", (percent, us) => {
    const { failures } = judgeRun(handMade(at(percent)));
    expect(failures).toMatchObject([{ rule: "serial/bit-time", span: { start: 40 } }]);
    expect(failures[0]?.measured?.value).toBeCloseTo(us, 1);
    // 833.33 us, 2 % up and down.
    expect(failures[0]?.limit?.atLeast).toBeCloseTo(816.67, 1);
    expect(failures[0]?.limit?.atMost).toBeCloseTo(850, 1);
  });

  test("twice the rate", () => {
    expect(faults(at(200))).toEqual([["serial/bit-time", 416.67, 40]]);
  });

  // Eight bits of 780 us are nearer to seven than to eight of 833.3 us.
  test("a rate so wrong that a byte of zeros seems to have a bit less, told once whatever line sets a level", () => {
    const said = received((queue, rxd) => {
      let time = 10 * MS;
      for (const levels of [
        [0, 1, 0, 1, 1, 0, 0, 1, 1, 1],
        [0, 0, 0, 0, 0, 0, 0, 0, 1, 1],
      ]) {
        for (const level of levels) {
          drive(queue, rxd, time, level === 1 ? 1 : 0, place(level === 1 ? 51 : 50));
          time += 780 * US;
        }
      }
    });
    expect(faults(said)).toEqual([["serial/bit-time", 780, 51]]);
  });

  /** 55 is 1 0 1 0 1 0 1 behind its start bit: an edge at every bit; the third is longer, the rest as it should be. */
  const oneLonger = (us: number) =>
    received((queue, rxd) => {
      const levels = [0, 1, 0, 1, 0, 1, 0, 1, 1] as const;
      for (const [index, level] of levels.entries()) {
        const late = index > 2 ? us * US : 0;
        drive(queue, rxd, Math.round(10 * MS + (index * 1e12) / 1200 + late), level, place(50 + index));
      }
    });

  test("one bit that is a little longer", () => {
    expect(faults(oneLonger(90))).toEqual([]);
  });

  test("one bit that is much longer is told at the edge that ends it", () => {
    expect(faults(oneLonger(200))).toEqual([["serial/bit-time", 1033.33, 53]]);
  });

  test("an interrupt that delays one edge and not those behind it", () => {
    const said = received((queue, rxd) => {
      const levels = [0, 1, 0, 1, 0, 1, 0, 1, 1] as const;
      for (const [index, level] of levels.entries()) {
        const late = index === 4 ? 100 * US : 0;
        drive(queue, rxd, Math.round(10 * MS + (index * 1e12) / 1200 + late), level);
      }
    });
    expect(faults(said)).toEqual([]);
  });
});

describe("the level at rest", () => {
  test("space for good", () => {
    expect(faults({ edges: [edge(20 * MS, "rxd", 0, "firmware", place(60))] })).toEqual([
      ["serial/idle-level", 980, 60],
    ]);
  });

  test("space between bytes, mark inside them", () => {
    const said = received((queue, rxd) => {
      drive(queue, rxd, 20 * MS, 0, place(60));
      drive(queue, rxd, 300 * MS, 1);
      drive(queue, rxd, 305 * MS, 0, place(61));
    });
    expect(faults(said)).toEqual([
      ["serial/idle-level", 280, 60],
      ["serial/idle-level", 695, 61],
    ]);
  });

  test("a byte of zeros is no rest", () => {
    expect(faults(received((queue, rxd) => void send(queue, rxd, 20 * MS, [0])))).toEqual([]);
  });
});

describe("the identification", () => {
  const byte = (from: number, value: number): ReceivedByte => ({
    from,
    time: from + 7 * MS,
    value,
    fault: undefined,
  });
  const rts = (on: number) => edge(on, "rts", 0, "pc");
  const start = (from: number) => edge(from - 0.01 * MS, "rxd", 0, "firmware", place(90));
  /** Alive on the wires, with a start bit for each byte. */
  const asked = (
    answers: readonly Answer[],
    bytes: readonly ReceivedByte[],
    layout = layouts["two-button"],
  ): Partial<Run> => ({
    ended: 5000 * MS,
    edges: [
      edge(1 * MS, "clock", 0, "firmware"),
      edge(2 * MS, "clock", 1, "firmware"),
      ...answers.map(({ asked: on }) => rts(on)),
      ...bytes.flatMap(({ from, time }) => [start(from), edge(time, "rxd", 1, "firmware")]),
    ].toSorted((a, b) => a.time - b.time),
    pc: { ...handMade({}).pc, answers, bytes },
    wanted: { layout, baud: 1200, scale: 1 },
  });
  const answer = (on: number, bytes: readonly ReceivedByte[], outcome: Answer["outcome"]): Answer => ({
    asked: on,
    ended: on + 300 * MS,
    bytes,
    outcome,
  });
  /** Faults of the identification: the bits of these lines are no real ones. */
  const told = (said: Partial<Run>) =>
    faults(said).filter(([rule]) => rule.startsWith("serial/ident") || rule.endsWith("ignored"));

  // Plug and Play External COM Device Specification, 2.1; kudzu serial.c: 200 ms.
  test.each([
    [193, []],
    [194, [["serial/ident-late", 201, 90]]],
  ] as const)("the byte begins %i ms after RTS", (delay, wrong) => {
    const bytes = [byte(600 * MS + delay * MS, 0x4d)];
    const said = asked([answer(600 * MS, bytes, "identified")], bytes);
    expect(told(said)).toEqual(wrong);
    expect(judgeRun(handMade(said)).figures.identifications).toEqual([
      { asked: 600 * MS, outcome: "identified", bytes: [0x4d], delay: (delay + 7) * MS },
    ]);
  });

  test("the byte comes when the PC no longer waits", () => {
    expect(told(asked([answer(600 * MS, [], "silent")], [byte(850 * MS, 0x4d)]))).toEqual([
      ["serial/ident-late", 257, 90],
    ]);
  });

  test("nothing ever comes", () => {
    const said = asked([answer(600 * MS, [], "silent"), answer(1200 * MS, [], "silent")], []);
    expect(told(said).map(([rule]) => rule)).toEqual(["serial/ident-missing"]);
  });

  test("the first time is answered, the second is not", () => {
    const bytes = [byte(614 * MS, 0x4d)];
    const said = asked([answer(600 * MS, bytes, "identified"), answer(3500 * MS, [], "silent")], bytes);
    expect(told(said).map(([rule]) => rule)).toEqual(["serial/control-line-ignored"]);
  });

  test("it comes when nobody asked", () => {
    const said = asked([answer(600 * MS, [], "silent")], [byte(100 * MS, 0x4d)]);
    expect(told(said).map(([rule]) => rule)).toEqual(["serial/control-line-ignored"]);
  });

  test("another byte comes", () => {
    const bytes = [byte(614 * MS, 0x4e)];
    const { failures } = judgeRun(handMade(asked([answer(600 * MS, bytes, "wrong")], bytes)));
    const [wrong] = failures.filter(({ rule }) => rule !== "serial/bit-time");
    expect([wrong]).toMatchObject([
      { rule: "serial/ident-wrong", measured: { value: 0x4e, unit: "hex" }, span: { start: 90 } },
    ]);
    expect(wrong?.message).toContain("0x4E");
    expect(wrong?.message).toContain("0x4D");
  });

  // ReactOS detect.c: 200 ms from one character to the next.
  test("the second character comes too late", () => {
    const bytes = [byte(614 * MS, 0x4d), byte(820 * MS, 0x33)];
    const said = asked([answer(600 * MS, bytes, "identified")], bytes, layouts["middle-button"]);
    expect(told(said)).toEqual([["serial/ident-late", 206, 90]]);
  });

  // PROTOCOL.TXT of a DOS mouse driver: a five-byte mouse says nothing.
  test("a five-byte mouse may say nothing", () => {
    expect(told(asked([answer(600 * MS, [], "identified")], [], layouts["five-byte"]))).toEqual([]);
  });

  test("a question that the run cut off is no fault", () => {
    expect(told(asked([{ asked: 4900 * MS, ended: undefined, bytes: [], outcome: "open" }], []))).toEqual([]);
  });
});
