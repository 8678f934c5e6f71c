import { describe, expect, test } from "vitest";
import { busState } from "../../../src-core/model/bus-states.ts";
import {
  deviceToHostFrame,
  hostToDeviceFrame,
  oddParity,
  readFrame,
} from "../../../src-core/model/frames.ts";

/** Parity counted by hand: the number of ones in data and parity is odd (The PS/2 Mouse/Keyboard Protocol). */
const parities: readonly (readonly [byte: number, parity: 0 | 1])[] = [
  [0x00, 1], // no ones
  [0x01, 0],
  [0x03, 1],
  [0x07, 0],
  [0x08, 0],
  [0x0f, 1],
  [0x64, 0], // 0110 0100, three ones
  [0x80, 0],
  [0xaa, 1], // four ones
  [0xc8, 0], // 1100 1000, three ones
  [0xe6, 0], // 1110 0110, five ones
  [0xf2, 0], // 1111 0010, five ones
  [0xf3, 1], // 1111 0011, six ones
  [0xf4, 0], // 1111 0100, five ones
  [0xfa, 1], // 1111 1010, six ones
  [0xfe, 0], // seven ones
  [0xff, 1], // eight ones
];

describe("odd parity", () => {
  test.each(parities)("%i: %i", (byte, parity) => {
    expect(oddParity(byte)).toBe(parity);
  });
});

/** Start 0, data from the lowest bit, parity, stop 1: Auxiliary Device and System Timings, bit table. */
const frames: readonly (readonly [byte: number, levels: string])[] = [
  [0xaa, "0 01010101 1 1"],
  [0xfa, "0 01011111 1 1"],
  [0xf4, "0 00101111 0 1"],
  [0x00, "0 00000000 1 1"],
];

describe("frames", () => {
  test.each(frames)("%i from the mouse: %s", (byte, levels) => {
    const frame = deviceToHostFrame(byte);
    expect(frame.map(({ level }) => level).join("")).toBe(levels.replaceAll(" ", ""));
    expect(frame).toHaveLength(11);
    expect(frame.every(({ driver }) => driver === "device")).toBe(true);
  });

  test("to the mouse there is a twelfth bit, in which the mouse pulls data low", () => {
    const frame = hostToDeviceFrame(0xf4);
    expect(frame.map(({ level }) => level).join("")).toBe("000101111010");
    expect(frame.at(-1)).toEqual({ role: "acknowledge", dataBit: undefined, level: 0, driver: "device" });
    expect(frame.slice(0, -1).every(({ driver }) => driver === "host")).toBe(true);
  });

  test.each(frames)("%i is read back", (byte, levels) => {
    const bits = Array.from(levels.replaceAll(" ", ""), Number);
    expect(readFrame(bits)).toEqual({ kind: "byte", value: byte });
  });

  test.each([
    ["1 00101111 0 1", "start"],
    ["0 00101111 1 1", "parity"],
    ["0 00101111 0 0", "stop"],
    ["0 00101111 0", "length"],
  ])("%s: %s", (levels, fault) => {
    expect(readFrame(Array.from(levels.replaceAll(" ", ""), Number))).toEqual({ kind: "fault", fault });
  });
});

describe("bus states, The PS/2 Mouse/Keyboard Protocol", () => {
  test.each([
    [1, 1, "idle"],
    [0, 1, "inhibited"],
    [0, 0, "inhibited"],
    [1, 0, "request-to-send"],
  ] as const)("clock %s, data %s: %s", (clock, data, state) => {
    expect(busState(clock, data)).toBe(state);
  });
});
