import { describe, expect, test } from "vitest";
import { createChip, simulatedChips } from "../../../../src-core/bench/chip/chip.ts";
import { wiringOf } from "../../../../src-core/bench/chip/wiring.ts";
import { avrChipNamed } from "../../../../src-core/model/chips.ts";
import { NO_WIRES } from "../../../../src-core/notes/wires.ts";
import { onBench, wiredChips } from "./chip-on-bench.ts";

describe("createChip", () => {
  test.each(simulatedChips)("%s has its memory, ports and timers", (name) => {
    const made = createChip({ name, hz: 8_000_000 });
    if (made.kind !== "chip") throw new Error(made.message);
    const { chip } = made;
    // SP is at the end of RAM after a reset: "Stack Pointer" of the datasheets; ends as in avr-libc's headers.
    expect(chip.cpu.SP).toBe(chip.model.memory.ramEnd);
    for (const { name: pin } of chip.model.pins) expect(chip.ports.pin(pin)).toBeDefined();
    expect([...chip.timers.keys()]).toEqual(
      chip.model.timers.filter(({ width }) => width !== 10).map(({ number }) => number),
    );
    expect(chip.usarts.length).toBe(chip.model.usarts.length);
  });

  test.each(["atmega8", "esp32", "attiny84", "nothing"])("%s is refused, with what can be chosen", (name) => {
    const made = createChip({ name, hz: 8_000_000 });
    expect(made).toMatchObject({ kind: "not-simulated", message: expect.stringContaining("atmega328p") });
  });

  test("what a program does not fill of flash is all ones", () => {
    const made = createChip({ name: "attiny85", hz: 8_000_000, program: new Uint16Array([0xc000]) });
    if (made.kind !== "chip") throw new Error(made.message);
    // 8 KB: features of the datasheet.
    expect(made.chip.cpu.progMem.length).toBe(4096);
    expect([...made.chip.cpu.progMem.subarray(0, 2)]).toEqual([0xc000, 0xffff]);
  });
});

test.each(wiredChips)("%s: what nothing acts on is told once, when it is used", (name) => {
  const bench = onBench(name);
  expect(bench.chip.core.notSimulated).toEqual([]);
  bench.pass(7);
  bench.write("ADCSRA", 0);
  bench.write("ADCSRA", 0x80);
  bench.write("ADCSRA", 0xc0);
  expect(bench.chip.core.notSimulated).toEqual([{ what: "ADCSRA (adc)", cycle: 7, at: undefined }]);
  expect(bench.read("ADCSRA")).toBe(0xc0);
});

test("timer 4 of ATmega32U4 is told", () => {
  const bench = onBench("atmega32u4");
  bench.write("TCCR4B", 1);
  expect(bench.chip.core.notSimulated).toMatchObject([{ what: "TCCR4B (timer4)" }]);
});

test("CLKPR divides the clock after its timed sequence, and time goes on from there", () => {
  // "System Clock Prescaler": CLKPCE alone, then CLKPS within four cycles; CLKPS 3 divides by 8.
  const bench = onBench("attiny85", {}, 8_000_000);
  const { clock } = bench.chip.core;
  bench.pass(800);
  bench.write("CLKPR", 3);
  expect(clock.hz).toBe(8_000_000);
  bench.write("CLKPR", 0x80);
  bench.write("CLKPR", 3);
  expect(clock.hz).toBe(1_000_000);
  // 800 cycles of 125 ns, then 50 of 1 us.
  expect(clock.timeOf(850)).toBe(150_000_000);
  expect(clock.cycleAt(150_000_000)).toBe(850);
  expect(clock.cycleAt(150_000_001)).toBe(851);
  bench.write("DDRB", 1 << 2);
  bench.pass(50);
  bench.write("DDRB", 0);
  expect(bench.queue.now).toBe(150_000_000);
});

describe("wiringOf", () => {
  const said = <T>(value: T) => ({ value, span: { file: "", start: 0, end: 0 } }) as never;
  const model = avrChipNamed("atmega328p");
  if (model === undefined) throw new Error("no model");

  test("board numbers and port bits become pins; the USART's pin is the chip's", () => {
    const wires = {
      ...NO_WIRES,
      ps2: { clock: said("2"), data: said("PD3"), pullups: said("external") },
      serial: { ...NO_WIRES.serial, uart: said(0), rts: said("A3"), shifter: said("none") },
    };
    // D2 is PD2 and A3 is PC3 in the sketch core's pin table; TXD is PD1 and RXD is PD0.
    expect(wiringOf(model, wires)).toEqual({
      kind: "wiring",
      wiring: {
        clock: "PD2",
        data: "PD3",
        hasExternalPullUps: true,
        transmit: "PD1",
        receive: "PD0",
        rts: "PC3",
        dtr: undefined,
        shifter: "none",
      },
    });
  });

  test("says what is missing and what is not there", () => {
    const wires = {
      ...NO_WIRES,
      ps2: { ...NO_WIRES.ps2, clock: said("PX9") },
      serial: { ...NO_WIRES.serial, uart: said(1) },
    };
    const result = wiringOf(model, wires);
    expect(result.kind).toBe("unknown");
    if (result.kind !== "unknown") return;
    expect(result.message).toContain("ps2 clock (PX9 is no pin of ATmega328P)");
    expect(result.message).toContain("ps2 data");
    expect(result.message).toContain("uart (ATmega328P has no USART 1)");
  });
});
