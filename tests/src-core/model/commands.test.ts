import { describe, expect, test } from "vitest";
import { commandByCode, commands } from "../../../src-core/model/commands.ts";
import { knockByRates, knocks } from "../../../src-core/model/knocks.ts";
import {
  mouseDefaults,
  resolutions,
  sampleRates,
  scaledTwoToOne,
} from "../../../src-core/model/mouse-settings.ts";
import { deviceIds, replyByCode } from "../../../src-core/model/replies.ts";
import { decodeStatus, encodeStatus } from "../../../src-core/model/status-packet.ts";

/** EM84502 mouse controller data sheet, section E: code, argument, replies. */
const table = [
  [0xff, "none", "acknowledge self-test-passed id"],
  [0xfe, "none", "last-packet"],
  [0xf6, "none", "acknowledge"],
  [0xf5, "none", "acknowledge"],
  [0xf4, "none", "acknowledge"],
  [0xf3, "sample-rate", "acknowledge"],
  [0xf2, "none", "acknowledge id"],
  [0xf0, "none", "acknowledge"],
  [0xee, "none", "acknowledge"],
  [0xec, "none", "acknowledge"],
  [0xeb, "none", "acknowledge movement-report"],
  [0xea, "none", "acknowledge"],
  [0xe9, "none", "acknowledge status-packet"],
  [0xe8, "resolution", "acknowledge"],
  [0xe7, "none", "acknowledge"],
  [0xe6, "none", "acknowledge"],
] as const;

describe("commands, EM84502 data sheet, section E", () => {
  test("there are sixteen", () => {
    expect(commands.map(({ code }) => code)).toEqual(table.map(([code]) => code));
    expect(commands).toHaveLength(16);
  });

  test.each(table)("%i", (code, argument, replies) => {
    const command = commandByCode(code);
    expect(command?.argument).toBe(argument);
    expect(command?.replies.join(" ")).toBe(replies);
  });

  test("codes between the commands are none", () => {
    for (const code of [0xe5, 0xed, 0xef, 0xf1, 0xf7, 0xfa, 0xfd, 0x00]) {
      expect(commandByCode(code)).toBeUndefined();
    }
  });

  test("replies", () => {
    expect([0xfa, 0xfe, 0xfc, 0xaa].map((code) => replyByCode(code)?.name)).toEqual([
      "acknowledge",
      "resend request",
      "error",
      "self-test passed",
    ]);
  });
});

describe("settings", () => {
  test("sample rates, FreeBSD manual psm(4)", () => {
    expect(sampleRates).toEqual([10, 20, 40, 60, 80, 100, 200]);
  });

  test("resolutions, ADNK-5023 design manual p. 9; counts per inch, psm(4)", () => {
    expect(
      resolutions.map(({ code, countsPerMm, countsPerInch }) => [code, countsPerMm, countsPerInch]),
    ).toEqual([
      [0, 1, 25],
      [1, 2, 50],
      [2, 4, 100],
      [3, 8, 200],
    ]);
  });

  test("after a reset: PC interrupt list, INT 15h AX=C201h", () => {
    expect(mouseDefaults).toMatchObject({
      sampleRate: 100,
      resolution: 2,
      scaling: "1:1",
      mode: "stream",
      reporting: false,
    });
  });

  test("2:1 scaling, table from memory: 0 1 1 3 6 9, then twice", () => {
    expect([0, 1, 2, 3, 4, 5, 6, 7, -2, -10].map(scaledTwoToOne)).toEqual([
      0, 1, 1, 3, 6, 9, 12, 14, -1, -20,
    ]);
  });
});

describe("knocks", () => {
  test("HT82M35X p. 3: 200, 100, 80 makes id 03", () => {
    expect(knockByRates([200, 100, 80])).toMatchObject({ name: "wheel", id: 3 });
  });

  test("Linux kernel documentation, input/sentelic: 200, 200, 80 makes id 04", () => {
    expect(knockByRates([200, 200, 80])).toMatchObject({ name: "five-button", id: 4 });
  });

  test("anything else is none", () => {
    expect(knockByRates([200, 100])).toBeUndefined();
    expect(knockByRates([100, 200, 80])).toBeUndefined();
  });

  test("every knock uses allowed rates and leads to a known id", () => {
    for (const { rates, id } of knocks) {
      for (const rate of rates) expect(sampleRates).toContain(rate);
      expect(deviceIds.map(({ code }) => code)).toContain(id);
    }
  });
});

describe("status packet, HT82M35X p. 3", () => {
  test("after a reset: stream mode, reporting off, 1:1, 4 counts per mm, 100 reports per second", () => {
    const bytes = encodeStatus({
      remote: false,
      reporting: false,
      scaling: "1:1",
      left: false,
      middle: false,
      right: false,
      resolution: 2,
      sampleRate: 100,
    });
    expect(bytes).toEqual([0x00, 0x02, 0x64]);
  });

  test.each([
    [0x40, { remote: true }],
    [0x20, { reporting: true }],
    [0x10, { scaling: "2:1" }],
    [0x04, { left: true }],
    [0x02, { middle: true }],
    [0x01, { right: true }],
  ])("first byte %i", (first, expected) => {
    expect(decodeStatus([first, 0x03, 0xc8])).toMatchObject({ ...expected, resolution: 3, sampleRate: 200 });
  });

  test("too few bytes are no status", () => {
    expect(decodeStatus([0x20, 0x02])).toBeUndefined();
  });
});
