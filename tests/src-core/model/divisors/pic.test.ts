import { describe, expect, test } from "vitest";
import { errorOf, generator, nearest, printed } from "./nearest.ts";

const pic = generator("pic");
const eightBit = generator("pic-eight-bit");

const K64 = "BRG16=0 BRGH=0";
const K16 = "BRG16=0 BRGH=1";
const K16Wide = "BRG16=1 BRGH=0";
const K4 = "BRG16=1 BRGH=1";

/** Table, FOSC in MHz, mode, baud, n, error in per cent as printed. */
type Row = readonly [table: string, mhz: number, mode: string, baud: number, n: number, error: number];

const LF1904 = "PIC16LF1904/6/7 Table 18-5";
const K22 = "PIC18(L)F2X/4XK22 DS41412C Table 16-5";
const K40 = "PIC18(L)F26/45/46K40 DS40001816C Table 27-5";
const F1938 = "PIC16(L)F1938/9 DS41574A Table 25-5";

const published: readonly Row[] = [
  [LF1904, 1, K64, 1200, 12, 0.16],
  [LF1904, 8, K64, 1200, 103, 0.16],
  [LF1904, 8, K64, 2400, 51, 0.16],
  [LF1904, 8, K64, 9600, 12, 0.16],
  [LF1904, 11.0592, K64, 1200, 143, 0],
  [LF1904, 11.0592, K64, 2400, 71, 0],
  [LF1904, 11.0592, K64, 9600, 17, 0],
  [K22, 16, K64, 1200, 207, 0.16],
  [K22, 16, K64, 2400, 103, 0.16],
  [K22, 16, K64, 9600, 25, 0.16],
  [LF1904, 20, K64, 2400, 129, 0.16],
  [LF1904, 20, K64, 9600, 32, -1.36],
  [K40, 1, K16, 1200, 51, 0.16],
  [K40, 1, K16, 2400, 25, 0.16],
  [K40, 8, K16, 2400, 207, 0.16],
  [K40, 8, K16, 9600, 51, 0.16],
  [K40, 8, K16Wide, 1200, 416, -0.08],
  [K40, 8, K16Wide, 2400, 207, 0.16],
  [K40, 8, K16Wide, 9600, 51, 0.16],
  [K40, 11.0592, K16Wide, 1200, 575, 0],
  [K40, 11.0592, K16Wide, 2400, 287, 0],
  [K40, 11.0592, K16Wide, 9600, 71, 0],
  [K40, 20, K16Wide, 1200, 1041, -0.03],
  [K40, 20, K16Wide, 2400, 520, -0.03],
  [K40, 20, K16Wide, 9600, 129, 0.16],
  [K40, 32, K16Wide, 9600, 207, 0.16],
  [F1938, 1, K4, 1200, 207, 0.16],
  [F1938, 1, K4, 2400, 103, 0.16],
  [F1938, 1, K4, 9600, 25, 0.16],
  [F1938, 8, K4, 1200, 1666, -0.02],
  [F1938, 8, K4, 2400, 832, 0.04],
  [F1938, 8, K4, 9600, 207, 0.16],
  [F1938, 11.0592, K4, 1200, 2303, 0],
  [F1938, 11.0592, K4, 2400, 1151, 0],
  [F1938, 11.0592, K4, 9600, 287, 0],
  [F1938, 20, K4, 1200, 4166, -0.01],
  [F1938, 20, K4, 2400, 2082, 0.02],
  [F1938, 20, K4, 9600, 520, -0.03],
  [F1938, 32, K4, 1200, 6666, 0],
  [F1938, 32, K4, 2400, 3332, 0.01],
  [F1938, 32, K4, 9600, 832, 0.04],
];

describe("PIC EUSART: published values of n", () => {
  test.each(published)("%s: %s MHz, %s, %s baud", (_, mhz, mode, baud, n, error) => {
    const found = nearest(pic, mhz * 1e6, baud, mode);
    expect([found.value, printed(found.errorPercent, 2)]).toEqual([n, error]);
  });

  test.each([
    [16, 103],
    [20, 129],
  ])("PIC16F870/871 DS30569C Table 9-4: %s MHz, 9600 baud, n %s, 0.16 %%", (mhz, n) => {
    const found = nearest(eightBit, mhz * 1e6, 9600, "BRGH=1");
    expect([found.value, printed(found.errorPercent, 2)]).toEqual([n, 0.16]);
  });

  test("PIC18F66K80 DS39977F Example 22-1: 16 MHz, 9600 baud, n 25, 9615 baud, 0.16 %", () => {
    const found = nearest(pic, 16e6, 9600, K64);
    expect(found.value).toBe(25);
    expect(Math.round(found.actualBaud)).toBe(9615);
    expect(printed(found.errorPercent, 2)).toBe(0.16);
  });
});

describe("PIC: what tables print and the formula does not confirm", () => {
  test("K40 Table 27-5, 32 MHz, 1200 baud: n 3332 is printed, which would be 600 baud; 1666 gives the printed -0.02 %", () => {
    expect(Math.round(pic.actualBaud(32e6, { sampling: K16Wide, value: 3332 }) ?? 0)).toBe(600);
    const found = nearest(pic, 32e6, 1200, K16Wide);
    expect([found.value, printed(found.errorPercent, 2)]).toEqual([1666, -0.02]);
  });

  test("K40 Table 27-5, 32 MHz, 2400 baud: -0.04 % is printed, n 832 gives +0.04 %", () => {
    const found = nearest(pic, 32e6, 2400, K16Wide);
    expect([found.value, printed(found.errorPercent, 2)]).toEqual([832, 0.04]);
  });

  test("F1938 Table 25-5, 4 MHz, 2400 baud: 0.08 % is printed, the formula gives -0.08 %", () => {
    expect(printed(nearest(pic, 4e6, 2400, K4).errorPercent, 2)).toBe(-0.08);
  });

  test("F1938 Table 25-5, 20 MHz, 300 baud: n 16665 is printed, the nearest is 16666; both round to 0.00 %", () => {
    expect(nearest(pic, 20e6, 300, K4).value).toBe(16_666);
    expect(printed(errorOf(pic, 20e6, 300, { sampling: K4, value: 16_665 }), 2)).toBe(0);
  });

  test("DS39605F p. 137, 8 MHz, K=16: 2400 and 9600 are printed as -0.16 %, they are 0.16 % fast", () => {
    const errors = [2400, 9600].map((baud) => printed(nearest(pic, 8e6, baud, K16).errorPercent, 2));
    expect(errors).toEqual([0.16, 0.16]);
  });

  test("DS39605F p. 137, 8 MHz, 16-bit: n 415 and 1665 are printed for 1200 and 300 baud; that table truncates", () => {
    expect(nearest(pic, 8e6, 1200, K16Wide).value).toBe(416);
    expect(printed(errorOf(pic, 8e6, 1200, { sampling: K16Wide, value: 415 }), 2)).toBe(0.16);
    expect(nearest(pic, 8e6, 300, K16Wide).value).toBe(1666);
    expect(printed(errorOf(pic, 8e6, 300, { sampling: K16Wide, value: 1665 }), 2)).toBe(0.04);
  });

  test("DS39605F p. 137, 16-bit: n 4165 (20 MHz, 300) and 1040 (40 MHz, 2400) are printed, nearest are 4166 and 1041", () => {
    expect(nearest(pic, 20e6, 300, K16Wide).value).toBe(4166);
    expect(nearest(pic, 40e6, 2400, K16Wide).value).toBe(1041);
  });

  test("DS30569C Table 9-4 prints 1.71 % (10 MHz, 2400) and 0.17 % (4 MHz, 1200 and 2400); 1.73 and 0.16 are right", () => {
    expect(printed(errorOf(eightBit, 10e6, 2400, { sampling: "BRGH=1", value: 255 }), 2)).toBe(1.73);
    const errors = [1200, 2400].map((baud) =>
      printed(nearest(eightBit, 4e6, baud, "BRGH=1").errorPercent, 2),
    );
    expect(errors).toEqual([0.16, 0.16]);
  });

  test("PIC16LF1904/6/7 Table 18-5, 20 MHz, 1200 baud: n 255 is the register's limit, 1.73 % off; n would be 259", () => {
    expect(printed(errorOf(pic, 20e6, 1200, { sampling: K64, value: 255 }), 2)).toBe(1.73);
    expect(pic.nearest(20e6, 1200, K64)).toEqual({
      kind: "out-of-range",
      reason: `SPBRGH:SPBRG for 1200 baud would have to be 259; with ${K64} it goes from 0 to 255`,
    });
  });
});
