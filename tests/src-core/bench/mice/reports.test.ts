import { describe, expect, test } from "vitest";
import type { MouseProfile } from "../../../../src-core/bench/mice/profile.ts";
import { mouseNamed } from "../../../../src-core/bench/mice/profiles.ts";
import { type StrokeStep, step } from "../../../../src-core/bench/strokes/stroke.ts";
import { ms } from "../../../../src-core/bench/time/time.ts";
import { type Desk, hex, readyDesk } from "./desk.ts";

function reporting(mouse: string | MouseProfile = "plain", commands: readonly number[] = []): Desk {
  const ready = readyDesk(mouse);
  ready.askAll([...commands, 0xf4]);
  ready.host.forget();
  return ready;
}

const wheelKnock = [0xf3, 0xc8, 0xf3, 0x64, 0xf3, 0x50];
const fiveButtonKnock = [0xf3, 0xc8, 0xf3, 0xc8, 0xf3, 0x50];

function perform({ mouse }: Desk, ...steps: readonly Partial<StrokeStep>[]): void {
  mouse.perform({ name: "", title: "", steps: steps.map(step) });
}

/**
 * Bits of the first byte from the highest: y overflow, x overflow, y sign, x sign, 1, middle, right, left (HT82M35X, p. 3; PAW3402,
 * 6.1; psm(4)); x to the right and y upwards are positive.
 */
const movements: readonly (readonly [what: string, moved: Partial<StrokeStep>, report: string])[] = [
  ["one to the right", { right: 1 }, "08 01 00"],
  ["one to the left", { right: -1 }, "18 FF 00"],
  ["one up", { down: -1 }, "08 00 01"],
  ["one down", { down: 1 }, "28 00 FF"],
  ["100 to the left and 200 down", { right: -100, down: 200 }, "38 9C 38"],
  ["the most there is", { right: 255, down: -255 }, "08 FF FF"],
  ["the least that is sent", { right: -255, down: 255 }, "38 01 01"],
  ["256 to the right: clipped, with the overflow flag of x", { right: 256 }, "48 FF 00"],
  ["300 down: clipped, with the overflow flag of y", { down: 300 }, "A8 00 01"],
  ["left button", { press: ["left"] }, "09 00 00"],
  ["right button", { press: ["right"] }, "0A 00 00"],
  ["middle button", { press: ["middle"] }, "0C 00 00"],
  ["a button and a movement", { press: ["left", "right"], right: 5 }, "0B 05 00"],
];

describe("a report of a plain mouse", () => {
  test.each(movements)("%s: %s", (_, moved, report) => {
    const ready = reporting();
    perform(ready, moved);
    ready.pass(30);
    expect(hex(ready.host.bytes())).toBe(report);
  });

  test("tells in the record what was put into it and what was lost", () => {
    const ready = reporting();
    perform(ready, { right: 300, down: -10, press: ["left"] });
    ready.pass(30);
    const [report] = ready.mouse.record.reports;
    expect(report).toMatchObject({
      bytes: [0x49, 0xff, 0x0a],
      values: { x: 255, y: 10, left: true, right: false, middle: false },
      lost: { x: 45, y: 0, wheel: 0 },
    });
    expect(report?.sentAt).toBe(ready.mouse.record.sent.at(-1)?.end);
  });

  /** Held at zero where there is no such button: PAW3402, 6.1; psm(4). */
  test("of a mouse without a middle button never has its bit set", () => {
    const plain = mouseNamed("plain");
    if (plain === undefined) throw new Error("no plain mouse");
    const ready = reporting({ ...plain, buttons: ["left", "right"] });
    perform(ready, { press: ["middle"], over: 50 * ms }, { right: 1 });
    expect(hex(ready.ask(0xe9))).toBe("FA 20 02 64 08 01 00");
  });

  test("tells a button that is still held after a reset", () => {
    const ready = reporting();
    perform(ready, { press: ["left"], over: 1000 * ms });
    ready.pass(30);
    ready.ask(0xff);
    ready.pass(400);
    ready.host.forget();
    ready.ask(0xf4);
    expect(hex(ready.host.bytes())).toBe("FA 09 00 00");
  });

  test("says nothing of wheel and of buttons that it lacks", () => {
    const ready = reporting();
    perform(ready, { wheel: 3, press: ["button4"] });
    ready.pass(50);
    expect(ready.host.bytes()).toEqual([]);
  });
});

/** Fourth byte: eight bits of wheel for id 03 (HT82M35X, PAW3402 6.2); 0 0 button5 button4 and four bits for id 04 (sentelic). */
const fourBytes: readonly (readonly [
  what: string,
  mouse: string,
  moved: Partial<StrokeStep>,
  report: string,
])[] = [
  ["one step towards the user", "wheel", { wheel: 1 }, "08 00 00 01"],
  ["one step away", "wheel", { wheel: -1 }, "08 00 00 FF"],
  ["all of it", "wheel", { right: -2, down: -3, wheel: 2, press: ["middle"] }, "1C FE 03 02"],
  ["one step away", "five-button", { wheel: -1 }, "08 00 00 0F"],
  ["eight steps away", "five-button", { wheel: -8 }, "08 00 00 08"],
  ["fourth button", "five-button", { press: ["button4"] }, "08 00 00 10"],
  ["fifth button and left", "five-button", { press: ["button5", "left"] }, "09 00 00 20"],
];

describe("a report of four bytes", () => {
  test.each(fourBytes)("%s, %s mouse", (_, mouse, moved, report) => {
    const ready = reporting(mouse, mouse === "wheel" ? wheelKnock : fiveButtonKnock);
    perform(ready, moved);
    ready.pass(40);
    expect(hex(ready.host.bytes())).toBe(report);
  });
});

describe("stream mode", () => {
  /** Argument of F3 is reports per second (ADNK-5023, App. F). */
  test.each([
    [10, 1],
    [20, 2],
    [40, 4],
    [100, 10],
    [200, 20],
  ])("at %i reports per second there are about %i in 100 ms", (rate, reports) => {
    const ready = reporting("plain", [0xf3, rate]);
    perform(ready, { right: 200, over: 1000 * ms });
    ready.pass(1000);
    const made = ready.mouse.record.reports;
    expect(Math.abs(made.length - reports * 10)).toBeLessThanOrEqual(1);
    const gaps = made.slice(1).map(({ sampled }, index) => sampled - (made[index]?.sampled ?? 0));
    expect(new Set(gaps)).toEqual(new Set([(1000 * ms) / rate]));
  });

  test("no count is lost and none comes twice", () => {
    const ready = reporting();
    perform(
      ready,
      { right: 333, down: -77, over: 170 * ms },
      { over: 55 * ms },
      { right: -21, over: 33 * ms },
    );
    ready.pass(400);
    const sum = (axis: "x" | "y") =>
      ready.mouse.record.reports.reduce((all, { values }) => all + (values[axis] ?? 0), 0);
    expect([sum("x"), sum("y")]).toEqual([312, 77]);
  });

  test("a mouse at rest is silent, and a held button is told once", () => {
    const ready = reporting();
    perform(ready, { press: ["left"], over: 300 * ms }, { release: ["left"] });
    ready.pass(500);
    expect(hex(ready.host.bytes())).toBe("09 00 00 08 00 00");
  });

  test("without F4, after F5 and in remote mode nothing comes by itself (EM84502, section E)", () => {
    for (const commands of [[], [0xf4, 0xf5], [0xf4, 0xf0], [0xf4, 0xee], [0xf4, 0xf6]]) {
      const ready = readyDesk("plain");
      ready.askAll(commands);
      ready.host.forget();
      perform(ready, { right: 50, over: 100 * ms });
      ready.pass(200);
      expect(ready.host.bytes()).toEqual([]);
    }
  });

  test("goes on after wrap mode", () => {
    const ready = reporting("plain", [0xee]);
    ready.askAll([0xec, 0xf4]);
    ready.host.forget();
    perform(ready, { right: 1 });
    ready.pass(30);
    expect(hex(ready.host.bytes())).toBe("08 01 00");
  });

  /** 0 to 5 become 0 1 1 3 6 9, more is doubled: from memory, no text reached. */
  test.each([
    [2, "08 01 00"],
    [-3, "18 FD 00"],
    [5, "08 09 00"],
    [10, "08 14 00"],
    [130, "48 FF 00"],
  ])("with scaling 2:1, %i becomes %s", (right, report) => {
    const ready = reporting("plain", [0xe7]);
    perform(ready, { right });
    ready.pass(30);
    expect(hex(ready.host.bytes())).toBe(report);
  });

  /** 1, 2, 4, 8 counts per millimetre (ADNK-5023, App. F); 4 is the default (interrupt list), in which strokes are given. */
  test.each([
    [0, 40, "08 0A 00"],
    [1, 40, "08 14 00"],
    [2, 40, "08 28 00"],
    [3, 40, "08 50 00"],
    [0, -6, "18 FF 00"],
  ])("resolution code %i makes of %i counts %s", (code, right, report) => {
    const ready = reporting("plain", [0xe8, code]);
    perform(ready, { right });
    ready.pass(30);
    expect(hex(ready.host.bytes())).toBe(report);
  });

  test("parts of a count are kept for the next report", () => {
    const ready = reporting("plain", [0xe8, 0]);
    perform(ready, { right: 6, down: 5 }, { over: 20 * ms }, { right: 2, down: 3 });
    ready.pass(60);
    expect(hex(ready.host.bytes())).toBe("28 01 FF 28 01 FF");
  });
});

describe("remote mode", () => {
  test("a report for each EB, with what has moved since the last", () => {
    const ready = readyDesk("plain");
    ready.ask(0xf0);
    perform(ready, { right: 7, press: ["right"] });
    expect(hex(ready.ask(0xeb))).toBe("FA 0A 07 00");
    expect(hex(ready.ask(0xeb))).toBe("FA 0A 00 00");
    perform(ready, { release: ["right"], down: 2 });
    expect(hex(ready.ask(0xeb))).toBe("FA 28 00 FE");
  });

  test("2:1 scaling is for stream mode alone (from memory)", () => {
    const ready = readyDesk("plain");
    ready.askAll([0xe7, 0xf0]);
    perform(ready, { right: 5 });
    expect(hex(ready.ask(0xeb))).toBe("FA 08 05 00");
  });

  test("FE brings the report again, not what has moved since", () => {
    const ready = readyDesk("plain");
    ready.ask(0xf0);
    perform(ready, { right: 7 });
    ready.ask(0xeb);
    perform(ready, { right: 1 });
    expect(hex(ready.ask(0xfe))).toBe("08 07 00");
    expect(hex(ready.ask(0xeb))).toBe("FA 08 01 00");
  });
});

describe("a command in the middle of a movement", () => {
  /** Any command but FE clears the counters: EM84502, section D iii. */
  test("clears the counters, and the record tells how much was forgotten", () => {
    const ready = readyDesk("plain");
    ready.ask(0xf0);
    perform(ready, { right: 9, down: 4, wheel: 1 });
    ready.ask(0xf2);
    expect(hex(ready.ask(0xeb))).toBe("FA 08 00 00");
    expect(ready.mouse.record.happenings.at(-1)).toMatchObject({
      kind: "counters-cleared",
      counts: { x: 9, y: -4, wheel: 1 },
    });
  });

  test("a button pressed meanwhile is told afterwards", () => {
    const ready = reporting();
    perform(ready, { press: ["left"], over: 500 * ms });
    ready.ask(0xe6);
    ready.pass(30);
    expect(hex(ready.host.bytes())).toBe("FA 09 00 00");
  });

  test("while the mouse waits for an argument it sends no reports", () => {
    const ready = reporting();
    perform(ready, { right: 100, over: 200 * ms });
    ready.ask(0xf3);
    ready.host.forget();
    ready.pass(50);
    expect(ready.host.bytes()).toEqual([]);
    expect(hex(ready.ask(0x64).slice(0, 1))).toBe("FA");
    expect(ready.host.heard.length).toBeGreaterThan(3);
  });
});
