import { describe, expect, test } from "vitest";
import { timeOfCycle } from "../../../../src-core/bench/time/time.ts";
import { type ChipOnBench, onBench, type WiredChip } from "./chip-on-bench.ts";

const usarts: readonly { chip: WiredChip; number: string; tx: string; vectors: readonly [string, string] }[] =
  [
    { chip: "atmega328p", number: "0", tx: "PD1", vectors: ["USART_UDRE_vect", "USART_TX_vect"] },
    { chip: "atmega168", number: "0", tx: "PD1", vectors: ["USART_UDRE_vect", "USART_TX_vect"] },
    { chip: "atmega32u4", number: "1", tx: "PD3", vectors: ["USART1_UDRE_vect", "USART1_TX_vect"] },
    { chip: "atmega2560", number: "0", tx: "PE1", vectors: ["USART0_UDRE_vect", "USART0_TX_vect"] },
    { chip: "atmega2560", number: "3", tx: "PJ1", vectors: ["USART3_UDRE_vect", "USART3_TX_vect"] },
  ];

function levelsOf(bench: ChipOnBench): readonly (readonly [cycle: number, level: number])[] {
  return bench.wires.edges
    .filter(({ wire }) => wire === "rxd")
    .map(({ time, level }) => [Math.round(time / 62_500), level] as const);
}

/** The line between edges, sampled in the middle of each bit from the first falling edge on. */
function sampled(bench: ChipOnBench, bitCycles: number, count: number): string {
  const edges = levelsOf(bench);
  const start = edges[0]?.[0] ?? 0;
  return Array.from({ length: count }, (_, bit) => {
    const cycle = start + (bit + 0.5) * bitCycles;
    return edges.findLast(([at]) => at <= cycle)?.[1] ?? 1;
  }).join("");
}

describe.each(usarts)("USART $number of $chip", ({ chip, number, tx, vectors }) => {
  const on = (changes: { double?: boolean; divisor?: number; c?: readonly string[] } = {}) => {
    const bench = onBench(chip, { transmit: tx });
    const { double = false, divisor = 832, c = ["UCSZ?1"] } = changes;
    const bit = (name: string) => bench.bits(name.replace("?", number));
    bench.write(`UBRR${number}H`, divisor >> 8);
    bench.write(`UBRR${number}L`, divisor & 0xff);
    bench.write(`UCSR${number}A`, double ? bit("U2X?") : 0);
    bench.write(
      `UCSR${number}C`,
      c.reduce((all, name) => all | bit(name), 0),
    );
    bench.write(`UCSR${number}B`, bit("TXEN?"));
    return { bench, bit };
  };

  test("'M' with seven data bits at 1200 baud: edges at whole bits of 16 (UBRR + 1) cycles", () => {
    const { bench } = on();
    bench.write(`UDR${number}`, 0x4d);
    bench.pass(200_000);
    // 16 MHz: UBRR 832 is a bit of 13,328 cycles. 0x4D from the lowest bit on is 1011001, with start 0 and stop 1.
    expect(sampled(bench, 13_328, 9)).toBe("010110011");
    const [first = [0, 0], ...others] = levelsOf(bench);
    const bits = others.map(([cycle]) => (cycle - first[0]) / 13_328);
    expect(bits).toEqual([1, 2, 3, 5, 7]);
    expect(bench.wires.edges[0]?.time).toBe(timeOfCycle(1, 16_000_000));
  });

  test("U2X halves the bit", () => {
    const { bench } = on({ double: true, divisor: 1666 });
    bench.write(`UDR${number}`, 0x55);
    bench.pass(200_000);
    const cycles = levelsOf(bench).map(([cycle]) => cycle);
    expect((cycles[1] ?? 0) - (cycles[0] ?? 0)).toBe(8 * 1667);
  });

  // UCSZ, UPM and USBS by their tables in "UCSRnC"; the frames by "Frame Formats".
  test.each([
    { what: "8N1", c: ["UCSZ?1", "UCSZ?0"], byte: 0xa7, line: "0111001011" },
    { what: "8E1", c: ["UCSZ?1", "UCSZ?0", "UPM?1"], byte: 0xa7, line: "01110010111" },
    { what: "8O1", c: ["UCSZ?1", "UCSZ?0", "UPM?1", "UPM?0"], byte: 0xa7, line: "01110010101" },
    { what: "7N2", c: ["UCSZ?1", "USBS?"], byte: 0x40, line: "0000000111" },
    { what: "5N1", c: [], byte: 0x0a, line: "0010101" },
  ])("$what", ({ c, byte, line }) => {
    const { bench } = on({ c, divisor: 0 });
    bench.write(`UDR${number}`, byte);
    bench.pass(1000);
    expect(sampled(bench, 16, line.length)).toBe(line);
  });

  test("two bytes fit; the second follows without a gap, and TXC comes after its stop bits", () => {
    // UDRE and TXC: "Transmitter Flags and Interrupts". 7N2 frames have ten bits, 7N1 nine.
    const { bench, bit } = on({ divisor: 0, c: ["UCSZ?1"] });
    const status = () => bench.read(`UCSR${number}A`);
    expect(status() & bit("UDRE?")).not.toBe(0);
    bench.write(`UDR${number}`, 0);
    expect(status() & bit("UDRE?")).not.toBe(0);
    bench.write(`UDR${number}`, 0);
    expect(status() & bit("UDRE?")).toBe(0);
    // A third one is lost: "data written ... when the UDREn Flag is not set, will be ignored".
    bench.write(`UDR${number}`, 0x7f);
    expect(bench.runUntil(() => (status() & bit("UDRE?")) !== 0, 1000)).toBe(1 + 9 * 16);
    expect(bench.runUntil(() => (status() & bit("TXC?")) !== 0, 1000)).toBe(1 + 18 * 16);
    expect(levelsOf(bench)).toEqual([
      [1, 0],
      [1 + 8 * 16, 1],
      [1 + 9 * 16, 0],
      [1 + 17 * 16, 1],
    ]);
    bench.write(`UCSR${number}A`, bit("TXC?"));
    expect(status() & bit("TXC?")).toBe(0);
    expect(status() & bit("UDRE?")).not.toBe(0);
  });

  test("interrupts: empty as long as it is, sent once", () => {
    const { bench, bit } = on({ divisor: 0 });
    bench.write(`UCSR${number}B`, bit("TXEN?") | bit("UDRIE?"));
    expect(bench.pending).toBe(vectors[0]);
    bench.chip.takeInterrupt();
    expect(bench.pending).toBe(vectors[0]);
    bench.write(`UDR${number}`, 1);
    bench.write(`UDR${number}`, 2);
    expect(bench.pending).toBeUndefined();
    bench.write(`UCSR${number}B`, bit("TXEN?") | bit("TXCIE?"));
    bench.pass(1000);
    expect(bench.pending).toBe(vectors[1]);
    bench.chip.takeInterrupt();
    expect(bench.pending).toBeUndefined();
    expect(bench.read(`UCSR${number}A`) & bit("TXC?")).toBe(0);
  });

  test("without TXEN nothing is sent and the port has the pin", () => {
    const { bench, bit } = on();
    bench.write(`UCSR${number}B`, 0);
    bench.write(`UDR${number}`, 0x4d);
    bench.pass(200_000);
    expect(levelsOf(bench)).toEqual([]);
    // Idle: high at the pin whatever PORT and DDR say. "Disabling the Transmitter".
    const letter = tx.slice(1, 2);
    bench.write(`DDR${letter}`, 1 << Number(tx.slice(2)));
    expect(bench.wires.rxd.level).toBe(0);
    bench.write(`UCSR${number}B`, bit("TXEN?"));
    expect(bench.wires.rxd.level).toBe(1);
  });
});

test("each edge of a byte has the place that wrote it", () => {
  const bench = onBench("atmega328p");
  bench.write("UCSR0B", bench.bits("TXEN0"));
  const writing = { file: "a.c", start: 1, end: 2 } as never;
  bench.chip.core.place = writing;
  bench.write("UDR0", 0x55);
  bench.chip.core.place = { file: "a.c", start: 8, end: 9 } as never;
  bench.pass(1000);
  expect(bench.wires.edges.length).toBeGreaterThan(8);
  for (const { cause } of bench.wires.edges) expect(cause).toEqual({ party: "firmware", at: writing });
});
