import { describe, expect, test } from "vitest";
import { timeOfCycle } from "../../../../src-core/bench/time/time.ts";
import { type ChipOnBench, onBench, type WiredChip } from "./chip-on-bench.ts";

/**
 * Expected values are those of "Data Reception - The USART Receiver" and "Register Description" of the ATmega328P datasheet: RXCn is set
 * while there are unread bytes, FEn, UPEn and DORn tell of the byte that is read next, and the interrupt asks as long as RXCn is set.
 */
const usarts: readonly { chip: WiredChip; number: string; tx: string; rx: string; vector: string }[] = [
  { chip: "atmega328p", number: "0", tx: "PD1", rx: "PD0", vector: "USART_RX_vect" },
  { chip: "atmega32u4", number: "1", tx: "PD3", rx: "PD2", vector: "USART1_RX_vect" },
  { chip: "atmega2560", number: "0", tx: "PE1", rx: "PE0", vector: "USART0_RX_vect" },
];

/** 16 MHz: UBRR 51 is 16 * 52 cycles a bit, 19231 baud. */
const bitCycles = 832;

describe.each(usarts)("the receiver of USART $number of $chip", ({ chip, number, tx, rx, vector }) => {
  const bit = (bench: ChipOnBench, ...names: string[]) =>
    bench.bits(...names.map((name) => name.replace("?", number)));

  /** Enabled, with this format; 8N1 where nothing is said. */
  function on(format: readonly string[] = ["UCSZ?1", "UCSZ?0"], also: readonly string[] = []): ChipOnBench {
    const bench = onBench(chip, { transmit: tx, receive: rx });
    bench.write(`UBRR${number}L`, 51);
    bench.write(`UCSR${number}C`, bit(bench, ...format));
    bench.write(`UCSR${number}B`, bit(bench, "RXEN?", ...also));
    return bench;
  }

  /** Puts levels on the PC's line, one for each bit, and rest behind them; 1 is mark. */
  function say(bench: ChipOnBench, ...frames: readonly string[]): void {
    const cause = { party: "pc", at: undefined } as const;
    for (const [index, level] of [...frames.join(""), "1"].entries())
      bench.queue.at(timeOfCycle(bench.cycles + 100 + index * bitCycles, 16_000_000), () =>
        bench.wires.txd.drive(level === "0" ? 0 : 1, cause),
      );
    bench.pass(100 + (frames.join("").length + 1) * bitCycles);
  }
  const status = (bench: ChipOnBench) =>
    ["RXC", "FE", "DOR", "UPE"].filter(
      (name) => (bench.read(`UCSR${number}A`) & bit(bench, `${name}?`)) !== 0,
    );
  const read = (bench: ChipOnBench) => bench.read(`UDR${number}`);

  test("nothing comes over a quiet line", () => {
    const bench = on(undefined, ["RXCIE?"]);
    bench.pass(1_000_000);
    expect(status(bench)).toEqual([]);
    expect(bench.pending).toBeUndefined();
    expect(bench.wires.edges.filter(({ wire }) => wire === "txd")).toEqual([]);
  });

  // "Frame Formats": start bit 0, data from the lowest bit on, parity, stop bit 1. 0xA7 from the lowest bit on is 11100101.
  test.each([
    { what: "8N1", format: ["UCSZ?1", "UCSZ?0"], line: "0111001011", value: 0xa7, flags: ["RXC"] },
    { what: "7N1", format: ["UCSZ?1"], line: "010110011", value: 0x4d, flags: ["RXC"] },
    { what: "8E1", format: ["UCSZ?1", "UCSZ?0", "UPM?1"], line: "01110010111", value: 0xa7, flags: ["RXC"] },
    {
      what: "8O1",
      format: ["UCSZ?1", "UCSZ?0", "UPM?1", "UPM?0"],
      line: "01110010101",
      value: 0xa7,
      flags: ["RXC"],
    },
    {
      what: "8E1, wrong parity",
      format: ["UCSZ?1", "UCSZ?0", "UPM?1"],
      line: "01110010101",
      value: 0xa7,
      flags: ["RXC", "UPE"],
    },
    {
      what: "8N1, no stop bit",
      format: ["UCSZ?1", "UCSZ?0"],
      line: "0111001010",
      value: 0xa7,
      flags: ["RXC", "FE"],
    },
  ])("$what", ({ format, line, value, flags }) => {
    const bench = on(format);
    say(bench, line);
    expect(status(bench)).toEqual(flags);
    expect(read(bench)).toBe(value);
    expect(status(bench)).toEqual([]);
  });

  test("the flags are those of the byte that is read next", () => {
    const bench = on();
    say(bench, "0100000001", "0010000000", "1");
    expect(status(bench)).toEqual(["RXC"]);
    expect(read(bench)).toBe(0x01);
    expect(status(bench)).toEqual(["RXC", "FE"]);
    expect(read(bench)).toBe(0x02);
    expect(status(bench)).toEqual([]);
  });

  const four = ["0100000001", "0010000001", "0110000001", "0001000001"];

  test("two bytes wait in the buffer and a third in the shift register; a fourth start bit ends that, an overrun", () => {
    const bench = on();
    say(bench, ...four.slice(0, 3));
    expect(status(bench)).toEqual(["RXC"]);
    expect([read(bench), read(bench), read(bench)]).toEqual([1, 2, 3]);
    say(bench, ...four);
    expect(status(bench)).toEqual(["RXC", "DOR"]);
    expect(read(bench)).toBe(1);
    // "This bit is valid until the receive buffer (UDRn) is read."
    expect(status(bench)).toEqual(["RXC"]);
    expect([read(bench), read(bench)]).toEqual([2, 4]);
    expect(status(bench)).toEqual([]);
  });

  test("the interrupt asks until the byte is read", () => {
    const bench = on(undefined, ["RXCIE?"]);
    say(bench, "0100000001");
    expect(bench.pending).toBe(vector);
    bench.chip.takeInterrupt();
    expect(bench.pending).toBe(vector);
    read(bench);
    expect(bench.pending).toBeUndefined();
  });

  test("a pulse shorter than half a bit is no start bit", () => {
    const bench = on();
    const cause = { party: "pc", at: undefined } as const;
    bench.queue.at(timeOfCycle(100, 16_000_000), () => bench.wires.txd.drive(0, cause));
    bench.queue.at(timeOfCycle(100 + bitCycles / 4, 16_000_000), () => bench.wires.txd.drive(1, cause));
    bench.pass(20 * bitCycles);
    expect(status(bench)).toEqual([]);
  });

  test("switched off it forgets what it has", () => {
    const bench = on();
    say(bench, "0100000001");
    bench.write(`UCSR${number}B`, 0);
    expect(status(bench)).toEqual([]);
  });
});
