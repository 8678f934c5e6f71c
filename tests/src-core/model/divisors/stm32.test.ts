import { describe, expect, test } from "vitest";
import { generator, nearest, printed } from "./nearest.ts";

const f1 = generator("stm32f1");
const f4 = generator("stm32f4");
const f0 = generator("stm32f0");

/** Table, clock in MHz, oversampling, baud, value programmed in the baud rate register, error as printed. */
type Row = readonly [table: string, mhz: number, over: 8 | 16, baud: number, divisor: number, error: number];

const f1Rows: readonly Row[] = [
  ["RM0008 Table 192", 36, 16, 2400, 937.5, 0],
  ["RM0008 Table 192", 36, 16, 9600, 234.375, 0],
  ["RM0008 Table 192", 72, 16, 2400, 1875, 0],
  ["RM0008 Table 192", 72, 16, 9600, 468.75, 0],
];

const f4Rows: readonly Row[] = [
  ["RM0090 Rev 11 Table 134", 8, 8, 1200, 833.375, 0],
  ["RM0090 Rev 11 Table 134", 8, 8, 2400, 416.625, 0.01],
  ["RM0090 Rev 11 Table 134", 8, 8, 9600, 104.125, 0.04],
  ["RM0090 Rev 11 Table 134", 12, 8, 1200, 1250, 0],
  ["RM0090 Rev 11 Table 134", 12, 8, 2400, 625, 0],
  ["RM0090 Rev 11 Table 134", 12, 8, 9600, 156.25, 0],
  ["RM0090 Rev 11 Table 135", 16, 16, 1200, 833.3125, 0],
  ["RM0090 Rev 11 Table 135", 16, 16, 2400, 416.6875, 0],
  ["RM0090 Rev 11 Table 135", 16, 16, 9600, 104.1875, 0.02],
  ["RM0090 Rev 11 Table 135", 24, 16, 1200, 1250, 0],
  ["RM0090 Rev 11 Table 135", 24, 16, 2400, 625, 0],
  ["RM0090 Rev 11 Table 135", 24, 16, 9600, 156.25, 0],
  ["RM0090 Rev 18 Table 138", 8, 16, 9600, 52.0625, 0.04],
  ["RM0090 Rev 18 Table 139", 16, 8, 2400, 833.375, 0],
  ["RM0090 Rev 18 Table 139", 16, 8, 9600, 208.375, 0.02],
  ["RM0090 Rev 11 Table 139", 30, 16, 2400, 781.25, 0],
  ["RM0090 Rev 11 Table 139", 30, 16, 9600, 195.3125, 0],
  ["RM0090 Rev 11 Table 139", 60, 16, 2400, 1562.5, 0],
  ["RM0090 Rev 11 Table 139", 60, 16, 9600, 390.625, 0],
];

describe("STM32F1 and F4: published divisors", () => {
  test.each(f1Rows)("%s: %s MHz, oversampling by %s, %s baud", (_, mhz, __, baud, divisor, error) => {
    const found = nearest(f1, mhz * 1e6, baud);
    expect(found.value / 16).toBe(divisor);
    expect(printed(Math.abs(found.errorPercent), 2)).toBe(error);
  });

  test.each(f4Rows)("%s: %s MHz, oversampling by %s, %s baud", (_, mhz, over, baud, divisor, error) => {
    const found = nearest(f4, mhz * 1e6, baud, over === 8 ? "OVER8=1" : "OVER8=0");
    expect(found.value / over).toBe(divisor);
    expect(printed(Math.abs(found.errorPercent), 2)).toBe(error);
  });

  test("RM0090 Rev 18 Table 138 prints 0.00 % for 8 MHz and 2400 baud; 208.3125 gives 0.01 %", () => {
    const found = nearest(f4, 8e6, 2400, "OVER8=0");
    expect(found.value / 16).toBe(208.3125);
    expect(printed(found.errorPercent, 2)).toBe(0.01);
  });

  test("RM0008 prints 0.15 % for 36 MHz and 115200 baud; the divisor is a tie (19.5 or 19.5625), 0.16 % off", () => {
    expect((36e6 * 2) / 115_200).toBe(625);
    const { value, errorPercent } = nearest(f1, 36e6, 115_200);
    expect(value / 16).toBe(19.5625);
    expect(printed(errorPercent, 2)).toBe(-0.16);
    expect(
      printed(((f1.actualBaud(36e6, { sampling: "OVER16", value: 312 }) ?? 0) / 115_200 - 1) * 100, 2),
    ).toBe(0.16);
  });
});

describe("STM32F1: RM0008 worked examples of the fraction", () => {
  test("25.62 gives BRR 0x19A", () => {
    expect(nearest(f1, 25.62 * 16 * 9600, 9600).value).toBe(0x19a);
  });

  test("50.99 carries into the mantissa: 0x330 (an early edition prints mantissa 0x32 with fraction 0x10)", () => {
    expect(nearest(f1, 50.99 * 16 * 9600, 9600).value).toBe(0x330);
  });
});

describe("STM32F0: RM0091 Rev 1 Table 85, 48 MHz", () => {
  test.each([
    ["OVER8=0", 2400, 0x4e20],
    ["OVER8=0", 9600, 0x1388],
    ["OVER8=1", 2400, 0x9c40],
    ["OVER8=1", 9600, 0x2710],
  ])("%s, %s baud", (sampling, baud, brr) => {
    const { registers, errorPercent } = nearest(f0, 48e6, baud, sampling);
    expect(registers.BRR).toBe(brr);
    expect(printed(errorPercent, 2)).toBe(0);
  });

  test("Table 85 prints 0.03 % for 57600 baud with OVER8=0; 833 gives 0.04 %", () => {
    const { value, errorPercent } = nearest(f0, 48e6, 57_600, "OVER8=0");
    expect(value).toBe(833);
    expect(printed(errorPercent, 2)).toBe(0.04);
  });

  test("Table 85 prints 0.02, 0.04 and 0.08 % with OVER8=1, which needs an odd USARTDIV that BRR cannot hold", () => {
    const errors = [57_600, 115_200, 230_400].map((baud) =>
      printed(nearest(f0, 48e6, baud, "OVER8=1").errorPercent, 2),
    );
    expect(errors.map(Math.abs)).toEqual([0.04, 0.08, 0.16]);
  });
});

describe("STM32: BRR worked out by hand from USARTDIV = f / (16 B) and f / (8 B)", () => {
  /** Clock in MHz, OVER8, and BRR for 1200, 2400, 4800, 9600; 0 where it does not fit. */
  test.each([
    [8, 0, [0x1a0b, 0x0d05, 0x0683, 0x0341]],
    [8, 1, [0x3413, 0x1a05, 0x0d03, 0x0681]],
    [12, 0, [0x2710, 0x1388, 0x09c4, 0x04e2]],
    [12, 1, [0x4e20, 0x2710, 0x1384, 0x09c2]],
    [16, 0, [0x3415, 0x1a0b, 0x0d05, 0x0683]],
    [16, 1, [0x6825, 0x3413, 0x1a05, 0x0d03]],
    [36, 1, [0xea60, 0x7530, 0x3a94, 0x1d46]],
    [48, 0, [0x9c40, 0x4e20, 0x2710, 0x1388]],
    [48, 1, [0, 0x9c40, 0x4e20, 0x2710]],
    [72, 0, [0xea60, 0x7530, 0x3a98, 0x1d4c]],
    [72, 1, [0, 0xea60, 0x7530, 0x3a94]],
    [84, 0, [0, 0x88b8, 0x445c, 0x222e]],
    [84, 1, [0, 0, 0x88b4, 0x4456]],
  ] as const)("%s MHz, OVER8=%s", (mhz, over8, expected) => {
    const found = [1200, 2400, 4800, 9600].map((baud) => {
      const result = f4.nearest(mhz * 1e6, baud, `OVER8=${over8}`);
      return result.kind === "setting" ? f4.registersOf(result.setting)[0]?.value : 0;
    });
    expect(found).toEqual(expected);
  });
});
