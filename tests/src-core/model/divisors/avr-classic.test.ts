import { describe, expect, test } from "vitest";
import { generator, nearest, printed } from "./nearest.ts";

const avr = generator("avr-classic");

/** One cell: UBRR and error in per cent as printed. */
type Cell = readonly [ubrr: number, error: number];

/**
 * "Examples of UBRRn settings for commonly used oscillator frequencies": ATmega328P 7810C Table 19-9 (1 to 2 MHz),
 * ATmega640/1280/2560 2549A Tables 107 and 109 (3.6864 to 7.3728 and 16 to 20 MHz), ATmega48/88/168 2545D Table 83
 * (8 to 14.7456 MHz). Rows: clock in MHz, U2X, cells for 2400, 4800 and 9600 baud.
 */
const published: readonly (readonly [mhz: number, u2x: 0 | 1, Cell, Cell, Cell])[] = [
  [1.0, 0, [25, 0.2], [12, 0.2], [6, -7.0]],
  [1.0, 1, [51, 0.2], [25, 0.2], [12, 0.2]],
  [1.8432, 0, [47, 0.0], [23, 0.0], [11, 0.0]],
  [1.8432, 1, [95, 0.0], [47, 0.0], [23, 0.0]],
  [2.0, 0, [51, 0.2], [25, 0.2], [12, 0.2]],
  [2.0, 1, [103, 0.2], [51, 0.2], [25, 0.2]],
  [3.6864, 0, [95, 0.0], [47, 0.0], [23, 0.0]],
  [3.6864, 1, [191, 0.0], [95, 0.0], [47, 0.0]],
  [4.0, 0, [103, 0.2], [51, 0.2], [25, 0.2]],
  [4.0, 1, [207, 0.2], [103, 0.2], [51, 0.2]],
  [7.3728, 0, [191, 0.0], [95, 0.0], [47, 0.0]],
  [7.3728, 1, [383, 0.0], [191, 0.0], [95, 0.0]],
  [8.0, 0, [207, 0.2], [103, 0.2], [51, 0.2]],
  [8.0, 1, [416, -0.1], [207, 0.2], [103, 0.2]],
  [11.0592, 0, [287, 0.0], [143, 0.0], [71, 0.0]],
  [11.0592, 1, [575, 0.0], [287, 0.0], [143, 0.0]],
  [14.7456, 0, [383, 0.0], [191, 0.0], [95, 0.0]],
  [14.7456, 1, [767, 0.0], [383, 0.0], [191, 0.0]],
  [16.0, 0, [416, -0.1], [207, 0.2], [103, 0.2]],
  [16.0, 1, [832, 0.0], [416, -0.1], [207, 0.2]],
  [18.432, 0, [479, 0.0], [239, 0.0], [119, 0.0]],
  [18.432, 1, [959, 0.0], [479, 0.0], [239, 0.0]],
  [20.0, 0, [520, 0.0], [259, 0.2], [129, 0.2]],
  [20.0, 1, [1041, 0.0], [520, 0.0], [259, 0.2]],
];

const bauds = [2400, 4800, 9600] as const;

describe("AVR USART: the datasheets' UBRR tables", () => {
  for (const [mhz, u2x, ...cells] of published) {
    test(`${mhz} MHz, U2X=${u2x}`, () => {
      const found = bauds.map((baud) => {
        const { value, errorPercent } = nearest(avr, Math.round(mhz * 1e6), baud, `U2X=${u2x}`);
        return [value, printed(errorPercent, 1)];
      });
      expect(found).toEqual(cells);
    });
  }
});

/** No datasheet table lists 1200 baud or 12 MHz: UBRR for U2X=0 and U2X=1, computed by hand from f/(16 B) - 1. */
const by1200: readonly (readonly [mhz: number, normal: Cell, double: Cell])[] = [
  [1, [51, 0.16], [103, 0.16]],
  [8, [416, -0.08], [832, 0.04]],
  [11.0592, [575, 0], [1151, 0]],
  [12, [624, 0], [1249, 0]],
  [16, [832, 0.04], [1666, -0.02]],
  [20, [1041, -0.03], [2082, 0.02]],
];

describe("AVR USART at 1200 baud, formula of ATmega48A/.../328P 8271 Table 20-1", () => {
  test.each(by1200)("%s MHz", (mhz, normal, double) => {
    const found = (["U2X=0", "U2X=1"] as const).map((sampling) => {
      const { value, errorPercent } = nearest(avr, mhz * 1e6, 1200, sampling);
      return [value, printed(errorPercent, 2)];
    });
    expect(found).toEqual([normal, double]);
  });
});

describe("AVR USART: range of UBRR, 12 bits (ATtiny2313A/4313 8246A p. 141)", () => {
  test("4095 is the largest", () => {
    expect(avr.actualBaud(16e6, { sampling: "U2X=0", value: 4095 })).toBeCloseTo(244.14, 2);
    expect(avr.actualBaud(16e6, { sampling: "U2X=0", value: 4096 })).toBeUndefined();
  });

  test("a rate too low for U2X=1 says so", () => {
    const found = avr.nearest(16e6, 300, "U2X=1");
    expect(found).toEqual({
      kind: "out-of-range",
      reason: "UBRR for 300 baud would have to be 6666; with U2X=1 it goes from 0 to 4095",
    });
  });

  test("a rate above the clock says so", () => {
    expect(avr.nearest(1e6, 230_400, "U2X=0").kind).toBe("out-of-range");
  });

  test("of two equally good settings the first is taken, of unequal ones the better", () => {
    expect(nearest(avr, 8e6, 4800).sampling).toBe("U2X=0");
    expect(nearest(avr, 1e6, 9600)).toMatchObject({ sampling: "U2X=1", value: 12 });
  });
});
