import { describe, expect, test } from "vitest";
import { Pc } from "../../../../src-core/bench/pcs/pc.ts";
import type { PcName } from "../../../../src-core/bench/pcs/pc-profile.ts";
import { pcNamed, pcProfiles } from "../../../../src-core/bench/pcs/pc-profiles.ts";
import { LayoutReceiver } from "../../../../src-core/bench/pcs/reports/layout-receiver.ts";
import { EventQueue } from "../../../../src-core/bench/time/event-queue.ts";
import { createWires } from "../../../../src-core/bench/wires/wires.ts";
import type { LayoutName } from "../../../../src-core/model/layouts/layout.ts";
import { layouts } from "../../../../src-core/model/report-layouts.ts";
import { eightTwo, send, sevenOne } from "./sender.ts";

const MS = 1e9;

/** A mouse of the test: what it sends, and how long after RTS came on. */
interface Answering {
  readonly delayMs: number;
  readonly bytes: readonly number[];
}

interface Options {
  readonly layout?: LayoutName;
  /** What it does each time RTS comes on; the last one holds for all further times. */
  readonly answers?: readonly Answering[];
  /** Bytes and when they begin, in ms. */
  readonly sent?: readonly (readonly [at: number, bytes: readonly number[]])[];
  readonly untilMs?: number;
}

/** mouse(4): "About 14 ms later the mouse will send 0x4D ('M')". */
const usual: Answering = { delayMs: 14, bytes: [0x4d] };

function run(
  name: PcName,
  { layout = "two-button", answers = [usual], sent = [], untilMs = 3000 }: Options = {},
) {
  const profile = pcNamed(name);
  if (profile === undefined) throw new Error(name);
  const queue = new EventQueue();
  const wires = createWires(queue, 0);
  const sending = layouts[layout].dataBits === 8 ? eightTwo : sevenOne;
  const receiver = new LayoutReceiver(layouts[layout]);
  const pc = new Pc({ queue, wires, profile, layout: layouts[layout], receiver });
  let asked = 0;
  wires.rts.onEdge(({ level, time }) => {
    if (level !== 0) return;
    const answer = answers[Math.min(asked, answers.length - 1)];
    asked += 1;
    if (answer !== undefined) send(queue, wires.rxd, time + answer.delayMs * MS, answer.bytes, sending);
  });
  for (const [at, bytes] of sent) send(queue, wires.rxd, at * MS, bytes, sending);
  queue.advanceTo(untilMs * MS);
  const lines = wires.edges.flatMap(({ time, wire, level }) =>
    wire === "rts" || wire === "dtr" ? [`${time / MS} ${wire} ${level === 0 ? "ON" : "OFF"}`] : [],
  );
  return { lines, record: pc.record, receiver, edges: wires.edges, pc };
}

test("names are in kebab case, titles are sentences, every one has sources", () => {
  expect(new Set(pcProfiles.map(({ name }) => name)).size).toBe(6);
  for (const { name, title, sources } of pcProfiles) {
    expect(name).toMatch(/^[a-z]+(-[a-z]+)*$/);
    expect(title).toMatch(/^[A-Z].*\.$/);
    expect(sources.length).toBeGreaterThan(0);
  }
  expect(pcNamed("no such")).toBeUndefined();
});

describe("RTS and DTR", () => {
  // Power-up to the first character of a mouse fed by the port: 200 ms, Plug and Play External COM Device Specification,
  // 2.1. RTS off 200 ms: Windows driver sample serenum, kudzu serial.c. That opening a port turns both on: common
  // practice, no source.
  test("rts-toggle: RTS off for 200 ms while DTR stays on", () => {
    expect(run("rts-toggle").lines).toEqual(["200 dtr ON", "200 rts ON", "400 rts OFF", "600 rts ON"]);
  });

  test("dtr-rts-toggle: both off for 200 ms", () => {
    expect(run("dtr-rts-toggle").lines).toEqual([
      "200 dtr ON",
      "200 rts ON",
      "400 dtr OFF",
      "400 rts OFF",
      "600 dtr ON",
      "600 rts ON",
    ]);
  });

  // T1 200 ms (DTR on, RTS off), T2 200 ms (both off), T3 200 ms (DTR alone), then RTS: names from Plug and Play External
  // COM Device Specification, Fig. 1, values from kudzu serial.c and the Windows driver sample serenum.
  test("plug-and-play: T1, T2, T3, then RTS", () => {
    expect(run("plug-and-play").lines).toEqual(["200 dtr ON", "400 dtr OFF", "600 dtr ON", "800 rts ON"]);
  });

  // T4: 200 ms for the first character, kudzu serial.c. Second attempt, 2.1 and Fig. 1: T2, then both at once; then the
  // idle state, DTR on and RTS off.
  test("plug-and-play: a second attempt with both lines at once, then the idle state", () => {
    expect(run("plug-and-play", { answers: [] }).lines).toEqual([
      "200 dtr ON",
      "400 dtr OFF",
      "600 dtr ON",
      "800 rts ON",
      "1000 dtr OFF",
      "1000 rts OFF",
      "1200 dtr ON",
      "1200 rts ON",
      "1400 rts OFF",
    ]);
  });

  // ReactOS detect.c, legacy probe: 100 ms.
  test("hurried: RTS off for 100 ms", () => {
    expect(run("hurried").lines).toEqual(["200 dtr ON", "300 rts ON"]);
  });

  // FreeBSD moused.c, probe: 240 ms. It starts after 1 s: the wait for a mouse's self-test in FreeBSD psm(4).
  test("patient: both off for 240 ms", () => {
    expect(run("patient").lines).toEqual([
      "1000 dtr ON",
      "1000 rts ON",
      "1240 dtr OFF",
      "1240 rts OFF",
      "1480 dtr ON",
      "1480 rts ON",
    ]);
  });

  test("second-reset: RTS off for 200 ms once more, 150 ms after the first byte of a report, and never again", () => {
    const { lines, record } = run("second-reset", { sent: [[1000, [0x40, 5, 3]]], untilMs: 10_000 });
    const first = record.bytes.find(({ from }) => from >= 1000 * MS);
    const off = (first?.time ?? 0) + 150 * MS;
    expect(lines.slice(4)).toEqual([`${off / MS} rts OFF`, `${off / MS + 200} rts ON`]);
    expect(record.sessions.map(({ to }) => to)).toEqual([off, undefined]);
  });

  test("second-reset: not while no report comes", () => {
    expect(run("second-reset", { untilMs: 10_000 }).record.sessions.length).toBe(1);
  });
});

describe("the identification", () => {
  test.each(pcProfiles.map(({ name }) => name))("%s knows the usual mouse of every layout", (name) => {
    // PROTOCOL.TXT of a DOS mouse driver 1.9, identification: M, M3, MZ@ and three zeros, nothing.
    const rows: readonly (readonly [LayoutName, readonly number[]])[] = [
      ["two-button", [0x4d]],
      ["middle-button", [0x4d, 0x33]],
      ["wheel", [0x4d, 0x5a, 0x40, 0, 0, 0]],
      ["five-byte", []],
    ];
    for (const [layout, bytes] of rows) {
      const { record, pc } = run(name, { layout, answers: [{ delayMs: 14, bytes }] });
      expect([layout, record.answers.at(-1)?.outcome]).toEqual([layout, "identified"]);
      expect(pc.isListening).toBe(true);
    }
  });

  // FreeBSD moused.c (H), HT6513B data sheet p. 7 (m).
  test.each([0x48, 0x6d])("a five-byte mouse may say %i", (byte) => {
    const { record } = run("rts-toggle", { layout: "five-byte", answers: [{ delayMs: 14, bytes: [byte] }] });
    expect(record.answers[0]?.outcome).toBe("identified");
  });

  // The first character has to be there within 200 ms: kudzu serial.c. At 1200 bit/s a character takes 7.5 ms.
  test.each([
    [190, "identified"],
    [195, "silent"],
  ] as const)("a byte that begins %i ms after RTS: %s", (delayMs, outcome) => {
    const { record } = run("hurried", { answers: [{ delayMs, bytes: [0x4d] }] });
    expect(record.answers[0]?.outcome).toBe(outcome);
  });

  // 240 ms: FreeBSD moused.c, probe.
  test.each([
    [230, "identified"],
    [235, "silent"],
  ] as const)("the patient one waits longer: %i ms, %s", (delayMs, outcome) => {
    const { record } = run("patient", { answers: [{ delayMs, bytes: [0x4d] }] });
    expect(record.answers[0]?.outcome).toBe(outcome);
  });

  test("another byte is wrong", () => {
    const { record, pc } = run("rts-toggle", { answers: [{ delayMs: 14, bytes: [0x4e] }] });
    expect(record.answers.map(({ outcome }) => outcome)).toEqual(["wrong"]);
    expect(pc.isListening).toBe(false);
  });

  test("M alone is no mouse with a middle button", () => {
    const { record } = run("rts-toggle", { layout: "middle-button" });
    expect(record.answers[0]?.outcome).toBe("wrong");
  });

  test("only the second attempt is answered", () => {
    const { record } = run("plug-and-play", { answers: [{ delayMs: 14, bytes: [] }, usual] });
    expect(record.answers.map(({ outcome }) => outcome)).toEqual(["silent", "identified"]);
  });

  test("plug-and-play reads to the end mark and takes reports from then on", () => {
    // Plug and Play External COM Device Specification, Table 3: the shortest mouse string, M, begin mark, revision, maker,
    // product, end mark, in 6-bit codes; maker ABC is 21 22 23, product 0001 is 10 10 10 11.
    const id = [0x4d, 0x08, 0x00, 0x01, 0x21, 0x22, 0x23, 0x10, 0x10, 0x10, 0x11, 0x09];
    const { record, receiver } = run("plug-and-play", {
      answers: [{ delayMs: 14, bytes: [...id, 0x40, 0x05, 0x03] }],
    });
    expect(record.answers[0]?.bytes.map(({ value }) => value)).toEqual(id);
    expect(receiver.reports.map(({ bytes }) => bytes)).toEqual([[0x40, 0x05, 0x03]]);
  });

  test("without an end mark it waits 200 ms for a further character", () => {
    const { record } = run("plug-and-play");
    const [answer] = record.answers;
    expect((answer?.ended ?? 0) - (answer?.bytes[0]?.time ?? 0)).toBe(200 * MS);
  });

  // T6, 2.2 s: ReactOS detect.c.
  test("a mouse that never ends its id is given up after 2.2 s", () => {
    const bytes = Array.from({ length: 500 }, () => 0x11);
    const { record } = run("plug-and-play", { answers: [{ delayMs: 14, bytes }], untilMs: 3100 });
    const [answer] = record.answers;
    expect((answer?.ended ?? 0) - (answer?.asked ?? 0)).toBe(2200 * MS);
    expect(answer?.outcome).toBe("wrong");
  });

  test("a question that the run ends is open", () => {
    const { record } = run("rts-toggle", { answers: [], untilMs: 700 });
    expect(record.answers).toMatchObject([{ outcome: "open", ended: undefined }]);
  });
});

describe("reports", () => {
  test("those of a session are taken, earlier bytes are not", () => {
    const { receiver, record } = run("rts-toggle", {
      sent: [
        [450, [0x40, 1, 1]],
        [700, [0x40, 5, 3]],
      ],
    });
    expect(receiver.reports.map(({ bytes }) => bytes)).toEqual([[0x40, 5, 3]]);
    // M when the port is opened, three bytes before it is asked, M, three bytes.
    expect(record.bytes.length).toBe(8);
  });

  test("a byte with a framing error is dropped, and the report goes on behind it", () => {
    const queue = new EventQueue();
    const wires = createWires(queue, 0);
    const receiver = new LayoutReceiver(layouts["two-button"]);
    const profile = pcNamed("hurried");
    if (profile === undefined) throw new Error("hurried");
    const pc = new Pc({ queue, wires, profile, layout: layouts["two-button"], receiver });
    send(queue, wires.rxd, 320 * MS, [0x4d]);
    send(queue, wires.rxd, 400 * MS, [0x40]);
    // Eight data bits with the top one clear: space where the stop bit is looked for.
    send(queue, wires.rxd, 410 * MS, [0x2a], { ...sevenOne, dataBits: 8 });
    send(queue, wires.rxd, 430 * MS, [5, 3]);
    queue.advanceTo(500 * MS);
    expect(pc.record.bytes.map(({ fault }) => fault)).toContain("framing");
    expect(receiver.reports.map(({ bytes }) => bytes)).toEqual([[0x40, 5, 3]]);
  });
});

test("the same inputs give the same edges, bytes and reports", () => {
  const options: Options = { sent: [[700, [0x40, 5, 3, 0x67, 0x3f, 0x3f]]], untilMs: 5000 };
  for (const { name } of pcProfiles) {
    const [one, other] = [run(name, options), run(name, options)];
    expect(one.edges).toEqual(other.edges);
    expect(one.record).toEqual(other.record);
    expect(one.receiver.reports).toEqual(other.receiver.reports);
  }
});
