import { describe, expect, test } from "vitest";
import { decodeReport } from "../../../../src-core/model/layouts/decode.ts";
import { encodeReport } from "../../../../src-core/model/layouts/encode.ts";
import type { ReportValues } from "../../../../src-core/model/layouts/values.ts";
import { layouts } from "../../../../src-core/model/report-layouts.ts";
import { bytes } from "./layout-bytes.ts";

/**
 * HT82M35X data sheet p. 3 and FreeBSD manual psm(4), data packet: y overflow, x overflow, y sign, x sign, 1, middle,
 * right, left; then x7..x0; then y7..y0. x grows to the right, y upwards.
 */
const standard: readonly (readonly [string, ReportValues, bits: string])[] = [
  ["rest", {}, "0000 1000 / 00000000 / 00000000"],
  ["left", { left: true }, "0000 1001 / 00000000 / 00000000"],
  ["right", { right: true }, "0000 1010 / 00000000 / 00000000"],
  ["middle", { middle: true }, "0000 1100 / 00000000 / 00000000"],
  ["one right", { x: 1 }, "0000 1000 / 00000001 / 00000000"],
  ["one left", { x: -1 }, "0001 1000 / 11111111 / 00000000"],
  ["one up", { y: 1 }, "0000 1000 / 00000000 / 00000001"],
  ["one down", { y: -1 }, "0010 1000 / 00000000 / 11111111"],
  ["255 right, 255 down", { x: 255, y: -255 }, "0010 1000 / 11111111 / 00000001"],
  ["128 right, 128 up", { x: 128, y: 128 }, "0000 1000 / 10000000 / 10000000"],
  [
    "200 left, all buttons",
    { x: -200, left: true, right: true, middle: true },
    "0001 1111 / 00111000 / 00000000",
  ],
];

const up = { left: false, right: false, middle: false };

describe("ps2-standard: HT82M35X data sheet p. 3", () => {
  test.each(standard)("%s", (_, values, bits) => {
    expect(encodeReport(layouts["ps2-standard"], values)).toEqual(bytes(bits));
    expect(decodeReport(layouts["ps2-standard"], bytes(bits))).toEqual({
      kind: "report",
      values: { x: 0, y: 0, ...up, ...values },
      overflow: [],
    });
  });

  test("-256 is accepted, though some texts end at -255 (psm(4))", () => {
    expect(decodeReport(layouts["ps2-standard"], bytes("0001 1000 / 00000000 / 00000000"))).toMatchObject({
      values: { x: -256 },
    });
  });

  test("a movement that does not fit is clipped and flagged", () => {
    expect(encodeReport(layouts["ps2-standard"], { x: 300 })).toEqual(
      bytes("0100 1000 / 11111111 / 00000000"),
    );
    expect(decodeReport(layouts["ps2-standard"], bytes("1100 1000 / 11111111 / 11111111"))).toMatchObject({
      overflow: ["x", "y"],
    });
  });

  test("a first byte without bit 3 belongs to no report", () => {
    expect(decodeReport(layouts["ps2-standard"], [0x00, 1, 1])).toEqual({
      kind: "constant-bit",
      byte: 0,
      bit: 3,
      expected: 1,
    });
  });

  test("a report that is too short", () => {
    expect(decodeReport(layouts["ps2-standard"], [0x08, 1])).toEqual({ kind: "length", expected: 3, got: 2 });
  });
});

describe("ps2-wheel: fourth byte z7..z0, HT82M35X data sheet p. 3", () => {
  test.each([
    ["rest", {}, "00000000"],
    ["one step towards the user", { wheel: 1 }, "00000001"],
    ["one step away", { wheel: -1 }, "11111111"],
    ["seven steps", { wheel: 7 }, "00000111"],
    ["eight steps away", { wheel: -8 }, "11111000"],
  ] as const)("%s", (_, values, fourth) => {
    expect(encodeReport(layouts["ps2-wheel"], values)).toEqual([0x08, 0, 0, ...bytes(fourth)]);
    expect(decodeReport(layouts["ps2-wheel"], [0x08, 0, 0, ...bytes(fourth)])).toMatchObject({
      values: { wheel: 0, ...values },
    });
  });

  test("all eight bits of the wheel are accepted", () => {
    expect(decodeReport(layouts["ps2-wheel"], [0x08, 0, 0, 0x80])).toMatchObject({ values: { wheel: -128 } });
  });
});

describe("ps2-five-button: fourth byte 0 0 b5 b4 z3..z0, HT82M35X data sheet p. 3", () => {
  test.each([
    ["rest", {}, "00 0 0 0000"],
    ["button 4", { button4: true }, "00 0 1 0000"],
    ["button 5", { button5: true }, "00 1 0 0000"],
    ["one step away", { wheel: -1 }, "00 0 0 1111"],
    ["both, seven steps", { button4: true, button5: true, wheel: 7 }, "00 1 1 0111"],
  ] as const)("%s", (_, values, fourth) => {
    expect(encodeReport(layouts["ps2-five-button"], values)).toEqual([0x08, 0, 0, ...bytes(fourth)]);
    expect(decodeReport(layouts["ps2-five-button"], [0x08, 0, 0, ...bytes(fourth)])).toMatchObject({
      values: { wheel: 0, button4: false, button5: false, ...values },
    });
  });
});
