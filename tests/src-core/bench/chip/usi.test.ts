import { describe, expect, test } from "vitest";
import { onBench } from "./chip-on-bench.ts";

// "USI – Universal Serial Interface" of the datasheet ATtiny25/45/85 2586, from memory: registers and figures of modes.
const mouse = { party: "mouse", at: undefined } as const;
const chips = ["attiny25", "attiny45", "attiny85"] as const;

describe.each(chips)("USI of %s", (name) => {
  /** PS/2 clock on USCK (PB2), data on DI (PB0), both with the mouse's pull-ups. */
  function onPs2(...control: string[]) {
    const bench = onBench(name);
    for (const wire of [bench.wires.clock, bench.wires.data]) wire.pullUp("mouse", true, mouse);
    bench.write("USICR", bench.bits(...control));
    const clockIn = (bits: string) => {
      for (const bit of bits) {
        bench.wires.data.drive("mouse", bit === "1" ? "released" : "low", mouse);
        bench.pass(160);
        bench.wires.clock.drive("mouse", "low", mouse);
        bench.pass(160);
        bench.wires.clock.drive("mouse", "released", mouse);
        bench.pass(160);
      }
    };
    return { bench, clockIn };
  }

  test("three wires, clocked from outside: a falling edge shifts a bit in, both edges count, the 16th sets USIOIF", () => {
    const { bench, clockIn } = onPs2("USIWM0", "USICS1", "USICS0", "USIOIE");
    clockIn("1010011");
    expect(bench.read("USISR") & 0x0f).toBe(14);
    expect(bench.pending).toBeUndefined();
    clockIn("1");
    expect(bench.pending).toBe("USI_OVF_vect");
    expect(bench.read("USIDR")).toBe(0b1010_0111);
    expect(bench.read("USIBR")).toBe(0b1010_0111);
    expect(bench.read("USISR") & 0x0f).toBe(0);
    bench.write("USISR", bench.bits("USIOIF") | 10);
    expect(bench.pending).toBeUndefined();
    expect(bench.read("USISR") & 0x0f).toBe(10);
    // From 10 on six edges, three bits, are left.
    clockIn("110");
    expect(bench.pending).toBe("USI_OVF_vect");
  });

  test("the rising edge shifts with USICS 10", () => {
    const { bench } = onPs2("USIWM0", "USICS1");
    bench.wires.clock.drive("mouse", "low", mouse);
    bench.wires.data.drive("mouse", "released", mouse);
    bench.pass(10);
    expect(bench.read("USIDR")).toBe(0);
    bench.wires.clock.drive("mouse", "released", mouse);
    bench.pass(10);
    expect(bench.read("USIDR")).toBe(1);
  });

  test("USICLK shifts and counts once by software; DO shows the highest bit", () => {
    const bench = onBench(name);
    bench.write("DDRB", 1 << 1);
    bench.write("USICR", bench.bits("USIWM0"));
    bench.write("USIDR", 0b1010_0000);
    const seen = [bench.wires.rxd.level];
    for (let bit = 0; bit < 3; bit += 1) {
      bench.write("USICR", bench.bits("USIWM0", "USICLK"));
      seen.push(bench.wires.rxd.level);
    }
    expect(seen).toEqual([1, 0, 1, 0]);
    expect(bench.read("USISR") & 0x0f).toBe(3);
  });

  test("a match of timer 0 shifts with USICS 01: one bit each (OCR0A + 1) counts", () => {
    const bench = onBench(name);
    bench.write("DDRB", 1 << 1);
    bench.write("USIDR", 0b0101_0101);
    bench.write("USICR", bench.bits("USIWM0", "USICS0"));
    bench.write("TCCR0A", bench.bits("WGM01"));
    bench.write("OCR0A", 103);
    bench.write("TCCR0B", bench.bits("CS01"));
    bench.pass(8 * 104 * 7);
    const edges = bench.wires.edges.filter(({ wire }) => wire === "rxd").map(({ time }) => time / 62_500);
    expect(edges.slice(1)).toEqual([1, 2, 3, 4, 5, 6, 7].map((bit) => bit * 832));
  });

  test("two wires: data is pulled low by a 0 and let go by a 1; a start sets its flag and holds the clock", () => {
    const bench = onBench(name);
    for (const wire of [bench.wires.clock, bench.wires.data]) wire.pullUp("mouse", true, mouse);
    bench.write("USIDR", 0xff);
    bench.write("PORTB", 0b101);
    bench.write("DDRB", 0b101);
    bench.wires.data.conflicts.length = 0;
    bench.wires.clock.conflicts.length = 0;
    bench.write("USICR", bench.bits("USIWM1", "USICS1", "USISIE"));
    bench.pass(10);
    expect([bench.wires.clock.level, bench.wires.data.level]).toEqual([1, 1]);
    bench.write("USIDR", 0x7f);
    bench.pass(1);
    expect(bench.wires.data.level).toBe(0);
    expect(bench.pending).toBe("USI_START_vect");
    expect(bench.wires.clock.level).toBe(0);
    bench.write("USISR", bench.bits("USISIF"));
    bench.pass(1);
    expect(bench.wires.clock.level).toBe(1);
    expect([...bench.wires.clock.conflicts, ...bench.wires.data.conflicts]).toEqual([]);
  });
});
