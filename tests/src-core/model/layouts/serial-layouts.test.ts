import { describe, expect, test } from "vitest";
import { decodeReport } from "../../../../src-core/model/layouts/decode.ts";
import { encodeReport, encodeWholeReport } from "../../../../src-core/model/layouts/encode.ts";
import type { ReportValues } from "../../../../src-core/model/layouts/values.ts";
import { layouts } from "../../../../src-core/model/report-layouts.ts";
import { bytes } from "./layout-bytes.ts";

/**
 * mouse(4) of man-pages 6.03, "table of the three-byte packet":
 *   byte 1: 1 lb rb dy7 dy6 dx7 dx6, byte 2: 0 dx5 .. dx0, byte 3: 0 dy5 .. dy0; dx positive right, dy positive down.
 * Each report typed from that table by hand.
 */
const threeBytes: readonly (readonly [string, ReportValues, bits: string])[] = [
  ["rest", {}, "1 0 0 00 00 / 0 000000 / 0 000000"],
  ["left button", { left: true }, "1 1 0 00 00 / 0 000000 / 0 000000"],
  ["right button", { right: true }, "1 0 1 00 00 / 0 000000 / 0 000000"],
  ["one to the right", { x: 1 }, "1 0 0 00 00 / 0 000001 / 0 000000"],
  ["one to the left", { x: -1 }, "1 0 0 00 11 / 0 111111 / 0 000000"],
  ["one down", { y: 1 }, "1 0 0 00 00 / 0 000000 / 0 000001"],
  ["one up", { y: -1 }, "1 0 0 11 00 / 0 000000 / 0 111111"],
  ["64 right, 64 down", { x: 64, y: 64 }, "1 0 0 01 01 / 0 000000 / 0 000000"],
  ["127 right, 128 up", { x: 127, y: -128 }, "1 0 0 10 01 / 0 111111 / 0 000000"],
  ["128 left, 127 down", { x: -128, y: 127 }, "1 0 0 01 10 / 0 000000 / 0 111111"],
  [
    "100 right, 37 up, both buttons",
    { x: 100, y: -37, left: true, right: true },
    "1 1 1 11 01 / 0 100100 / 0 011011",
  ],
  ["12 right, 5 down, left", { x: 12, y: 5, left: true }, "1 1 0 00 00 / 0 001100 / 0 000101"],
];

const up = { left: false, right: false };

describe("two-button: the table of mouse(4), table of the three-byte packet", () => {
  test.each(threeBytes)("%s", (_, values, bits) => {
    expect(encodeReport(layouts["two-button"], values)).toEqual(bytes(bits));
    expect(decodeReport(layouts["two-button"], bytes(bits))).toEqual({
      kind: "report",
      values: { x: 0, y: 0, ...up, ...values },
      overflow: [],
    });
  });

  test("more than 127 is clipped, the rest waits", () => {
    expect(encodeReport(layouts["two-button"], { x: 300, y: -300 })).toEqual(
      bytes("1 0 0 10 01 / 0 111111 / 0 000000"),
    );
  });
});

describe("middle-button: mouse(4), packet with a fourth byte", () => {
  const layout = layouts["middle-button"];

  test("while the middle button is up, the three-byte packet is sent", () => {
    expect(encodeReport(layout, { x: 1 })).toEqual(bytes("1 0 0 00 00 / 0 000001 / 0 000000"));
  });

  test("when it is down, a fourth byte of 0x20 (the manual prints 0,0,0,0x20 and leaves the first byte's 0x40 out)", () => {
    expect(encodeReport(layout, { middle: true })).toEqual([0x40, 0, 0, 0x20]);
  });

  test("when it is let go, the fourth byte is sent once more (FreeBSD moused.c)", () => {
    expect(encodeWholeReport(layout, { middle: false })).toEqual([0x40, 0, 0, 0x00]);
  });

  test("low bits of the fourth byte do not matter: 21 and 22 are down as well (FreeBSD moused.c)", () => {
    for (const fourth of [0x20, 0x21, 0x22]) {
      expect(decodeReport(layout, [0x40, 0, 0, fourth])).toMatchObject({ values: { middle: true } });
    }
  });

  test("three bytes say nothing about the middle button", () => {
    const decoded = decodeReport(layout, [0x60, 0, 0]);
    expect(decoded).toEqual({
      kind: "report",
      values: { x: 0, y: 0, left: true, right: false },
      overflow: [],
    });
  });
});

describe("wheel: fourth byte 0 - middle z3 z2 z1 z0, EM84520 data sheet p. 3", () => {
  test.each([
    ["rest", {}, "0 0 0 0000"],
    ["middle", { middle: true }, "0 0 1 0000"],
    ["one step towards the user", { wheel: 1 }, "0 0 0 0001"],
    ["one step away", { wheel: -1 }, "0 0 0 1111"],
    ["farthest", { wheel: 7, middle: true }, "0 0 1 0111"],
    ["farthest away", { wheel: -8 }, "0 0 0 1000"],
  ] as const)("%s", (_, values, fourth) => {
    expect(encodeReport(layouts.wheel, values)).toEqual([0x40, 0, 0, ...bytes(fourth)]);
    expect(decodeReport(layouts.wheel, [0x40, 0, 0, ...bytes(fourth)])).toMatchObject({
      values: { wheel: 0, middle: false, ...values },
    });
  });
});

/**
 * mouse(4), "table of the five-byte packet": byte 1 is 1 0 0 0 0 lb mb rb with a button cleared while it is down, then dxa, dya,
 * dxb, dyb in two's complement; the sum counts, dy negated. Negative bytes as in FreeBSD manual mouse(4): eight bits.
 */
const fiveBytes: readonly (readonly [string, ReportValues, bits: string])[] = [
  ["rest", {}, "10000 111 / 00000000 / 00000000 / 00000000 / 00000000"],
  ["left", { left: true }, "10000 011 / 00000000 / 00000000 / 00000000 / 00000000"],
  ["middle", { middle: true }, "10000 101 / 00000000 / 00000000 / 00000000 / 00000000"],
  ["right", { right: true }, "10000 110 / 00000000 / 00000000 / 00000000 / 00000000"],
  ["9 right", { x: 9 }, "10000 111 / 00001001 / 00000000 / 00000000 / 00000000"],
  ["3 up", { y: 3 }, "10000 111 / 00000000 / 00000011 / 00000000 / 00000000"],
  ["one left, two down", { x: -1, y: -2 }, "10000 111 / 11111111 / 11111110 / 00000000 / 00000000"],
  ["200 right: 127 and 73", { x: 200 }, "10000 111 / 01111111 / 00000000 / 01001001 / 00000000"],
  ["130 down: 127 and 3", { y: -130 }, "10000 111 / 00000000 / 10000001 / 00000000 / 11111101"],
];

describe("five-byte: the table of mouse(4), table of the five-byte packet", () => {
  test.each(fiveBytes)("%s", (_, values, bits) => {
    expect(encodeReport(layouts["five-byte"], values)).toEqual(bytes(bits));
    expect(decodeReport(layouts["five-byte"], bytes(bits))).toEqual({
      kind: "report",
      values: { x: 0, y: 0, left: false, right: false, middle: false, ...values },
      overflow: [],
    });
  });

  test("the header at rest is 87 (FreeBSD manual mouse(4))", () => {
    expect(encodeReport(layouts["five-byte"], {})[0]).toBe(0x87);
  });

  test("the movement is the sum of both pairs, however they share it", () => {
    expect(decodeReport(layouts["five-byte"], [0x87, 5, 0xfe, 0xfd, 4])).toMatchObject({
      values: { x: 2, y: 2 },
    });
  });

  test("no byte of 80, which passes for a header (Linux sermouse.c)", () => {
    expect(encodeReport(layouts["five-byte"], { x: -128, y: -254 })).toEqual([0x87, 0x81, 0x81, 0xff, 0x81]);
  });
});
