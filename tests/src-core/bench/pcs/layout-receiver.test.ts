import { describe, expect, test } from "vitest";
import { LayoutReceiver } from "../../../../src-core/bench/pcs/reports/layout-receiver.ts";
import { buttonChanges } from "../../../../src-core/bench/pcs/reports/report-receiver.ts";
import type { LayoutName } from "../../../../src-core/model/layouts/layout.ts";
import { layouts } from "../../../../src-core/model/report-layouts.ts";

const MS = 1e9;

/** A byte each 7.5 ms: nine bits at 1200 bit/s (mouse(4)); a string is a silence in ms. */
function take(layout: LayoutName, line: readonly (number | `${number} ms`)[]) {
  const receiver = new LayoutReceiver(layouts[layout]);
  let now = 0;
  for (const each of line) {
    if (typeof each === "string") now += Number.parseFloat(each) * MS;
    else {
      receiver.receive({ from: now, time: now + 7 * MS, value: each, fault: undefined });
      now += 7.5 * MS;
    }
  }
  return {
    values: receiver.reports.map(({ values }) => values),
    discarded: receiver.discarded.map(({ bytes, why }) => [why, ...bytes]),
    receiver,
  };
}

// mouse(4), table of the three-byte packet: 1 lb rb dy7 dy6 dx7 dx6, 0 dx5..dx0, 0 dy5..dy0, put together by hand.
/** dx 5, dy 3. */
const rightDown = [0x40, 0x05, 0x03] as const;
/** dx -1 (FF), dy 127 (7F), left button: 1 1 0 0 1 1 1, 3F, 3F. */
const leftFarDown = [0x67, 0x3f, 0x3f] as const;
/** dx -128 (80), dy 0, right button: 1 0 1 0 0 1 0. */
const leftFull = [0x52, 0x00, 0x00] as const;

const readRightDown = { x: 5, y: 3, left: false, right: false };
const readLeftFarDown = { x: -1, y: 127, left: true, right: false };
const readLeftFull = { x: -128, y: 0, left: false, right: true };

describe("two-button", () => {
  test("reports as mouse(4) draws them", () => {
    const { values, discarded } = take("two-button", [...rightDown, ...leftFarDown, ...leftFull]);
    expect(values).toEqual([readRightDown, readLeftFarDown, readLeftFull]);
    expect(discarded).toEqual([]);
  });

  test.each([
    [
      "first",
      [0x05, 0x03],
      [
        ["no first byte", 0x05],
        ["no first byte", 0x03],
      ],
    ],
    ["second", [0x40, 0x03], [["cut short", 0x40, 0x03]]],
    ["third", [0x40, 0x05], [["cut short", 0x40, 0x05]]],
  ])("one report is lost with its %s byte, the next is read", (_, rest, lost) => {
    const { values, discarded } = take("two-button", [...leftFarDown, ...rest, ...leftFull]);
    expect(values).toEqual([readLeftFarDown, readLeftFull]);
    expect(discarded).toEqual(lost);
  });

  test("a spurious byte between reports is thrown away", () => {
    const { values, discarded } = take("two-button", [...rightDown, 0x2a, ...leftFull]);
    expect(values).toEqual([readRightDown, readLeftFull]);
    expect(discarded).toEqual([["no first byte", 0x2a]]);
  });

  test("a spurious byte inside a report spoils that report alone", () => {
    // Without bit 6 it stands for the third byte, and that one belongs to nothing.
    const { values, discarded } = take("two-button", [0x40, 0x05, 0x2a, 0x03, ...leftFull]);
    expect(values).toEqual([{ x: 5, y: 0x2a, left: false, right: false }, readLeftFull]);
    expect(discarded).toEqual([["no first byte", 0x03]]);
  });

  test("a spurious first byte inside a report begins one", () => {
    const { values, discarded } = take("two-button", [0x40, 0x43, 0x05, 0x03]);
    expect(values).toEqual([{ x: -59, y: 3, left: false, right: false }]);
    expect(discarded).toEqual([["cut short", 0x40]]);
  });

  // Linux kernel, sermouse.c: HZ/10.
  test("a silence of more than 100 ms ends a report that is not whole", () => {
    const { values, discarded } = take("two-button", [0x40, 0x05, "101 ms", 0x03, ...leftFull]);
    expect(values).toEqual([readLeftFull]);
    expect(discarded).toEqual([
      ["silence", 0x40, 0x05],
      ["no first byte", 0x03],
    ]);
  });

  test("a shorter one does not", () => {
    expect(take("two-button", [0x40, 0x05, "90 ms", 0x03]).values).toEqual([readRightDown]);
  });

  test("a reset of the mouse ends what has begun", () => {
    const { receiver } = take("two-button", [0x40, 0x05]);
    receiver.reset(40 * MS);
    receiver.receive({ from: 50 * MS, time: 57 * MS, value: 0x03, fault: undefined });
    expect(receiver.reports).toEqual([]);
    expect(receiver.discarded.map(({ why }) => why)).toEqual(["reset", "no first byte"]);
  });

  test("a report tells when it began and when it was whole", () => {
    const { receiver } = take("two-button", ["50 ms", ...rightDown]);
    expect(receiver.reports[0]).toMatchObject({ from: 50 * MS, time: 72 * MS, bytes: rightDown });
  });
});

describe("middle-button", () => {
  // mouse(4): "When the middle button is down a 4-byte packet is sent, where the 4th byte has value 0x20".
  test("the fourth byte is the middle button", () => {
    const { values, discarded } = take("middle-button", [
      ...rightDown,
      0x20,
      ...leftFull,
      0x00,
      ...rightDown,
    ]);
    expect(values).toEqual([readRightDown, { middle: true }, readLeftFull, { middle: false }, readRightDown]);
    expect(discarded).toEqual([]);
  });

  // FreeBSD moused.c: low bits of the fourth byte differ between mice and are masked out.
  test.each([0x21, 0x22])("%i is the middle button as well", (fourth) => {
    expect(take("middle-button", [...rightDown, fourth]).values[1]).toEqual({ middle: true });
  });

  test("a fifth byte belongs to nothing", () => {
    const { discarded } = take("middle-button", [...rightDown, 0x20, 0x20]);
    expect(discarded).toEqual([["no first byte", 0x20]]);
  });

  test("a fourth byte after a silence belongs to nothing", () => {
    const { values, discarded } = take("middle-button", [...rightDown, "101 ms", 0x20]);
    expect(values).toEqual([readRightDown]);
    expect(discarded).toEqual([["no first byte", 0x20]]);
  });

  test("buttons go down and up in order", () => {
    const { receiver } = take("middle-button", [...leftFarDown, 0x20, ...leftFull, 0x00]);
    expect(
      buttonChanges(receiver.reports).map(({ time, button, down }) => [time / MS, button, down]),
    ).toEqual([
      [22, "left", true],
      [29.5, "middle", true],
      [52, "left", false],
      [52, "right", true],
      [59.5, "middle", false],
    ]);
  });
});

describe("wheel", () => {
  // EM84520 data sheet, p. 3, and sermouse.c: every report has four bytes, 0 0 middle z3 z2 z1 z0.
  test("the fourth byte has the middle button and the wheel", () => {
    const { values } = take("wheel", [...rightDown, 0x1f, ...leftFull, 0x08, ...rightDown, 0x07]);
    expect(values).toEqual([
      { ...readRightDown, wheel: -1, middle: true },
      { ...readLeftFull, wheel: -8, middle: false },
      { ...readRightDown, wheel: 7, middle: false },
    ]);
  });

  test("a report without its fourth byte is lost, the next is read", () => {
    const { values, discarded } = take("wheel", [...rightDown, ...leftFull, 0x01]);
    expect(values).toEqual([{ ...readLeftFull, wheel: 1, middle: false }]);
    expect(discarded).toEqual([["cut short", ...rightDown]]);
  });
});

describe("five-byte", () => {
  // mouse(4), table of the five-byte packet: 1 0 0 0 0 lb mb rb, cleared when pressed; two pairs whose sums count.
  test("both pairs count, buttons are active low", () => {
    const { values } = take(
      "five-byte",
      [0x87, 10, 20, 0xff, 0xfe, 0x83, 127, 0, 127, 0x81, 0x85, 0, 0, 0, 0],
    );
    expect(values).toEqual([
      { x: 9, y: 18, left: false, middle: false, right: false },
      { x: 254, y: -127, left: true, middle: false, right: false },
      { x: 0, y: 0, left: false, middle: true, right: false },
    ]);
  });

  test("a byte that is no header is thrown away where a report has to begin", () => {
    const { values, discarded } = take("five-byte", [0x05, 0x87, 1, 2, 3, 4]);
    expect(values.length).toBe(1);
    expect(discarded).toEqual([["no first byte", 0x05]]);
  });

  test("after a lost byte it finds the headers again", () => {
    // The second report lacks its last byte: the next header stands for it, and four bytes belong to nothing.
    const { values, discarded } = take(
      "five-byte",
      [0x87, 1, 0, 0, 0, 0x87, 1, 0, 0, 0x87, 1, 2, 3, 4, 0x86, 5, 6, 7, 8],
    );
    expect(values.length).toBe(3);
    expect(values[2]).toEqual({ x: 12, y: 14, left: false, middle: false, right: true });
    expect(discarded.length).toBe(4);
  });

  test("a header inside a report is data", () => {
    expect(take("five-byte", [0x87, 0x87, 0, 0, 0]).values[0]).toMatchObject({ x: 0x87 - 256 });
  });

  test("a silence of more than 100 ms ends a report that is not whole", () => {
    const { values, discarded } = take("five-byte", [0x87, 1, 2, "101 ms", 0x87, 1, 2, 3, 4]);
    expect(values.length).toBe(1);
    expect(discarded).toEqual([["silence", 0x87, 1, 2]]);
  });
});
