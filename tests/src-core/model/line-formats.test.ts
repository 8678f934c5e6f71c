import { describe, expect, test } from "vitest";
import { avrFrameBits, avrLineFormat, ucsrcValue } from "../../../src-core/model/avr-frames.ts";
import {
  acceptance,
  bitsPerFrame,
  byteTimeMs,
  formatLineFormat,
  type LineFormat,
  parseLineFormat,
  preferredLineFormat,
  reportsPerSecond,
} from "../../../src-core/model/line-formats.ts";
import { layouts } from "../../../src-core/model/report-layouts.ts";

function format(text: string): LineFormat {
  return parseLineFormat(text) ?? expect.fail(`${text} is no line format`);
}

describe("line formats", () => {
  test.each(["7N1", "7N2", "8N1", "8N2", "7E1", "8O2", "9N1", "5M1", "7S2"])(
    "%s is read and written",
    (text) => {
      expect(formatLineFormat(format(text))).toBe(text);
    },
  );

  test.each(["", "7N", "N71", "7N3", "4N1", "10N1", "7X1", "7N1.5", "7N11"])("'%s' is none", (text) => {
    expect(parseLineFormat(text)).toBeUndefined();
  });

  test("small letters are read too", () => {
    expect(parseLineFormat("7n1")).toEqual({ dataBits: 7, parity: "none", stopBits: 1 });
  });

  /** Bits: start + data + parity + stop, counted by hand; times: bits x 1000 / 1200. */
  test.each([
    ["7N1", 9, 7.5],
    ["8N1", 10, 8.333],
    ["7N2", 10, 8.333],
    ["8N2", 11, 9.167],
    ["7E2", 11, 9.167],
  ])("%s: %s bits, %s ms at 1200 baud", (text, bits, ms) => {
    expect(bitsPerFrame(format(text))).toBe(bits);
    expect(byteTimeMs(format(text), 1200)).toBeCloseTo(ms, 3);
  });

  test("Linux sermouse.c, comments: 80 and 96 updates per second with 2 and 4 updates per report", () => {
    expect(reportsPerSecond(format("7N2"), 1200, 3)).toBeCloseTo(80 / 2, 9);
    expect(reportsPerSecond(format("8N1"), 1200, 5)).toBeCloseTo(96 / 4, 9);
  });
});

describe("what a PC reads: Plug and Play External COM Device Specification, 2.2", () => {
  test.each(["7N1", "7N2", "7M1"])("seven data bits as %s", (text) => {
    expect(acceptance(layouts["two-button"], format(text))).toEqual({ kind: "accepted" });
  });

  test("eight data bits with the top bit at 1 are the same on the wire", () => {
    expect(acceptance(layouts["two-button"], format("8N1")).kind).toBe("accepted-with-bit-7-set");
  });

  test.each(["7E1", "7O1", "7S1", "6N1", "8E1", "9N1"])("not %s", (text) => {
    expect(acceptance(layouts["two-button"], format(text)).kind).toBe("refused");
  });

  test.each(["8N1", "8N2"])(
    "the five-byte layout as %s: mouse(4) says 8N2, the DOS driver's text 8N1",
    (text) => {
      expect(acceptance(layouts["five-byte"], format(text))).toEqual({ kind: "accepted" });
    },
  );

  test.each(["7N1", "7N2", "8E1", "9N1"])("the five-byte layout not as %s", (text) => {
    expect(acceptance(layouts["five-byte"], format(text)).kind).toBe("refused");
  });

  test("the format that costs least", () => {
    expect(formatLineFormat(preferredLineFormat(layouts["two-button"]))).toBe("7N1");
    expect(formatLineFormat(preferredLineFormat(layouts["five-byte"]))).toBe("8N1");
  });
});

describe("frame bits of the AVR USART", () => {
  /** Values of SERIAL_7N1 and so on in HardwareSerial.h of the sketch core 1.8.7; odd is even + 0x10. */
  test.each([
    ["5N1", 0x00],
    ["6N1", 0x02],
    ["7N1", 0x04],
    ["8N1", 0x06],
    ["7N2", 0x0c],
    ["8N2", 0x0e],
    ["7E1", 0x24],
    ["8E1", 0x26],
    ["7O1", 0x34],
    ["8O1", 0x36],
    ["8O2", 0x3e],
  ])("%s is UCSRnC = %i", (text, value) => {
    expect(ucsrcValue(format(text))).toBe(value);
  });

  test("UCSZn2:0 of 8271, UCSRnC: 0 to 3 are 5 to 8 bits, 7 is 9 bits, the rest is reserved", () => {
    const bits = [0, 1, 2, 3, 4, 5, 6, 7].map(
      (size) => avrLineFormat({ size, parity: 0, stop: 0 })?.dataBits,
    );
    expect(bits).toEqual([5, 6, 7, 8, undefined, undefined, undefined, 9]);
  });

  test("UPMn1:0 of 1 is reserved, and there is no mark parity", () => {
    expect(avrLineFormat({ size: 3, parity: 1, stop: 0 })).toBeUndefined();
    expect(avrFrameBits(format("7M1"))).toBeUndefined();
    expect(ucsrcValue(format("9N1"))).toBeUndefined();
  });
});
