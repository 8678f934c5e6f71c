import { expect, test } from "vitest";
import { cLibrary, sketchLibrary } from "./library-target.ts";

test("strtol stops at the ends of long and tells where it stopped (C11 7.22.1.4)", async () => {
  const target = await cLibrary();
  const end = target.room(2);
  const text = target.place("  0x1Fz");
  expect(target.call("strtol", text, end, 0)).toBe(31);
  expect(target.bytes(end, 2)).toEqual([(text + 6) & 0xff, (text + 6) >> 8]);
  expect(target.call("strtol", "99999999999", 0, 10)).toBe(2147483647);
  expect(target.call("strtol", "-99999999999", 0, 10)).toBe(-2147483648);
  expect(target.call("strtoul", "4294967295", 0, 10)).toBe(4294967295);
  expect(target.call("strtoul", "99999999999", 0, 10)).toBe(4294967295);
});

test("a text without a number gives 0 and its own place (C11 7.22.1.4p7, p8)", async () => {
  const target = await cLibrary();
  const end = target.room(2);
  const text = target.place("  mouse");
  expect(target.call("strtol", text, end, 10)).toBe(0);
  expect(target.bytes(end, 2)).toEqual([text & 0xff, text >> 8]);
});

test("itoa puts a minus sign in base 10 alone (avr-libc manual, stdlib.h)", async () => {
  const target = await cLibrary();
  const text = (value: number, base: number) =>
    target.text(Number(target.call("itoa", value, target.room(20), base)));
  expect(text(-255, 10)).toBe("-255");
  expect(text(-1, 16)).toBe("ffff");
  expect(text(5, 2)).toBe("101");
});

test("dtostrf: width, decimals, negative width for the left side (avr-libc manual, stdlib.h)", async () => {
  const target = await cLibrary();
  const text = (value: number, width: number, decimals: number) =>
    target.text(Number(target.call("dtostrf", Math.fround(value), width, decimals, target.room(40))));
  expect(text(3.25, 7, 2)).toBe("   3.25");
  expect(text(3.25, -7, 2)).toBe("3.25   ");
  expect(text(-2, 1, 0)).toBe("-2");
});

test("rand: the 10,000th number of the minimal standard generator (Park and Miller, 1988)", async () => {
  const target = await cLibrary();
  let last: number | bigint | undefined = 0;
  for (let draw = 0; draw < 10_000; draw += 1) last = target.call("random");
  expect(last).toBe(1043618065);
});

test("rand stays in 0 to RAND_MAX, 0x7FFF, and repeats from a seed (C11 7.22.2; avr-libc manual, stdlib.h)", async () => {
  const target = await cLibrary();
  const draw = () => Array.from({ length: 50 }, () => Number(target.call("rand")));
  target.call("srand", 7);
  const first = draw();
  target.call("srand", 7);
  expect(draw()).toEqual(first);
  expect(Math.min(...first)).toBeGreaterThanOrEqual(0);
  expect(Math.max(...first)).toBeLessThanOrEqual(0x7fff);
  expect(new Set(first).size).toBeGreaterThan(40);
});

test("checksums of the digits 1 to 9, as catalogues of CRC algorithms list them (check values from memory)", async () => {
  const target = await cLibrary();
  const check = (name: string, start: number) => {
    let crc = start;
    for (const byte of [0x31, 0x32, 0x33, 0x34, 0x35, 0x36, 0x37, 0x38, 0x39]) {
      crc = Number(target.call(name, crc, byte));
    }
    return crc;
  };
  // CRC-16/ARC, CRC-16/MODBUS, CRC-16/XMODEM, CRC-16/MCRF4XX, CRC-8/MAXIM, CRC-8/SMBUS.
  expect(check("_crc16_update", 0)).toBe(0xbb3d);
  expect(check("_crc16_update", 0xffff)).toBe(0x4b37);
  expect(check("_crc_xmodem_update", 0)).toBe(0x31c3);
  expect(check("_crc_ccitt_update", 0xffff)).toBe(0x6f91);
  expect(check("_crc_ibutton_update", 0)).toBe(0xa1);
  expect(check("_crc8_ccitt_update", 0)).toBe(0xf4);
});

test("rounding: round halves away from zero, lrint to even (C11 7.12.9)", async () => {
  const target = await cLibrary();
  const all = (name: string) =>
    [-2.5, -1.5, -0.4, 0.5, 1.5, 2.5].map((x) => Number(target.call(name, x)) + 0);
  expect(all("round")).toEqual([-3, -2, 0, 1, 2, 3]);
  expect(all("lround")).toEqual([-3, -2, 0, 1, 2, 3]);
  expect(all("lrint")).toEqual([-2, -2, 0, 0, 2, 2]);
  expect(all("trunc")).toEqual([-2, -1, 0, 0, 1, 2]);
});

test("double has 32 bits on AVR, so results are floats (avr-gcc: sizeof(double) is 4)", async () => {
  const target = await cLibrary();
  expect(target.call("sqrt", 2)).toBe(1.4142135381698608);
});

test("frexp and modf tell both parts (C11 7.12.6.4, 7.12.6.12)", async () => {
  const target = await cLibrary();
  const to = target.room(4);
  expect(target.call("frexp", 20, to)).toBe(0.625);
  expect(target.bytes(to, 2)).toEqual([5, 0]);
  expect(target.call("modf", -3.75, to)).toBe(-0.75);
  // IEEE 754 binary32 of -3 is 0xC0400000.
  expect(target.bytes(to, 4)).toEqual([0, 0, 0x40, 0xc0]);
});

test("div and ldiv build quotient and remainder (C11 7.22.6.2)", async () => {
  const target = await cLibrary();
  const result = target.room(8);
  expect(target.call("div", result, -7, 2)).toBeUndefined();
  expect(target.bytes(result, 4)).toEqual([0xfd, 0xff, 0xff, 0xff]);
  target.call("ldiv", result, 70000, 3);
  expect(target.bytes(result, 8)).toEqual([0x25, 0x5b, 0, 0, 1, 0, 0, 0]);
});

test("abs of the least int is that int, as two's complement has no other (C11 7.22.6.1 leaves it open)", async () => {
  const target = await cLibrary();
  expect(target.call("abs", -32768)).toBe(-32768);
  expect(target.call("labs", -32768)).toBe(32768);
});

test("map computes (value - fromLow) * (toHigh - toLow) / (fromHigh - fromLow) + toLow (the core's language reference)", async () => {
  const target = await sketchLibrary();
  expect(target.call("map", 512, 0, 1023, 0, 255)).toBe(127);
  expect(target.call("map", 0, 0, 1023, 255, 0)).toBe(255);
  expect(target.call("map", -1, 0, 10, 0, 100)).toBe(-10);
});

test("the compiler's own functions on bits (gcc manual, Other Builtins)", async () => {
  const target = await cLibrary();
  // "One plus the index of the least significant 1-bit of x, or if x is zero, returns zero."
  expect([0x18, 1, 0].map((value) => target.call("__builtin_ffs", value))).toEqual([4, 1, 0]);
  // "The number of leading 0-bits in x": an int of the AVR has 16.
  expect([target.call("__builtin_clz", 1), target.call("__builtin_clzl", 1)]).toEqual([15, 31]);
  expect(target.call("__builtin_ctz", 0x18)).toBe(3);
  expect(target.call("__builtin_popcountll", -1n)).toBe(64);
  // "The number of 1-bits in x modulo 2."
  expect([7, 0xff, 0].map((value) => target.call("__builtin_parity", value))).toEqual([1, 0, 0]);
  expect(target.call("__builtin_bswap32", 0x12345678)).toBe(0x78563412);
  // "If x is 0, the result is undefined."
  expect(() => target.call("__builtin_clz", 0)).toThrow("undefined");
});
