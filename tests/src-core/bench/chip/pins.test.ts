import { describe, expect, test } from "vitest";
import { onBench, type WiredChip, wiredChips, wirings } from "./chip-on-bench.ts";

/** The port registers of a pin. */
function registersOf(pin: string) {
  const letter = pin.slice(1, 2);
  return { pin: `PIN${letter}`, ddr: `DDR${letter}`, port: `PORT${letter}`, mask: 1 << Number(pin.slice(2)) };
}

const pull = { party: "mouse", at: undefined } as const;

// Expected levels: table "Port Pin Configurations" in "I/O-Ports" of the datasheets (DDxn, PORTxn, PUD), from memory.
describe.each(wiredChips)("pins of %s", (name) => {
  test("an output at 0 pulls the line low; an input lets it go; the edges say who", () => {
    const bench = onBench(name);
    const clock = registersOf(wirings[name].clock);
    bench.wires.clock.pullUp("mouse", true, pull);
    expect(bench.read(clock.pin) & clock.mask).toBe(clock.mask);
    bench.write(clock.ddr, clock.mask);
    expect(bench.wires.clock.level).toBe(0);
    expect(bench.read(clock.pin) & clock.mask).toBe(0);
    bench.pass(1600);
    bench.write(clock.ddr, 0);
    bench.pass(1);
    expect(bench.wires.clock.level).toBe(1);
    // 1600 cycles at 16 MHz are 100 us.
    expect(bench.wires.edges).toMatchObject([
      { time: 0, wire: "clock", level: 0, cause: { party: "firmware" } },
      { time: 100_000_000, wire: "clock", level: 1, cause: { party: "firmware" } },
    ]);
  });

  test("PORT of an input is a pull-up, and PUD switches it off", () => {
    const bench = onBench(name);
    const { ddr, port, mask } = registersOf(wirings[name].data);
    bench.write(ddr, mask);
    bench.write(ddr, 0);
    bench.pass(1);
    expect(bench.wires.data.level).toBe(0);
    bench.write(port, mask);
    bench.pass(1);
    expect(bench.wires.data.level).toBe(1);
    bench.write("MCUCR", bench.bits("PUD"));
    bench.write(port, 0);
    bench.write(ddr, mask);
    bench.write(ddr, 0);
    bench.write(port, mask);
    bench.pass(1);
    expect(bench.wires.data.level).toBe(0);
    bench.write("MCUCR", 0);
    bench.pass(1);
    expect(bench.wires.data.level).toBe(1);
  });

  test("resistors on the board lift a line that nobody pulls low", () => {
    const bench = onBench(name, { hasExternalPullUps: true });
    const { ddr, mask } = registersOf(wirings[name].data);
    bench.write(ddr, mask);
    bench.write(ddr, 0);
    bench.pass(1);
    expect(bench.wires.data.level).toBe(1);
  });

  test("an output at 1 drives the line high, which is noted as what must not be", () => {
    const bench = onBench(name);
    const { ddr, port, mask } = registersOf(wirings[name].data);
    bench.write(port, mask);
    bench.write(ddr, mask);
    expect(bench.wires.data.conflicts).toMatchObject([{ kind: "driven-high", cause: { party: "firmware" } }]);
  });

  test("a 1 written to PIN turns the output over", () => {
    const bench = onBench(name);
    const { pin, ddr, port, mask } = registersOf(wirings[name].transmit);
    bench.write(ddr, mask);
    expect(bench.wires.rxd.level).toBe(0);
    bench.write(pin, mask);
    expect(bench.wires.rxd.level).toBe(1);
    expect(bench.read(port)).toBe(mask);
  });

  // Mark is the negative voltage and ON the positive one (EIA/TIA-232-E 2.1.3, 2.1.5); a shifter turns each over.
  test.each([
    { shifter: "inverting", highIsMark: 1, on: 0 },
    { shifter: "none", highIsMark: 0, on: 1 },
  ] as const)("shifter $shifter: the level of RTS and of the transmit pin", ({ shifter, highIsMark, on }) => {
    const bench = onBench(name, { shifter });
    expect(bench.wires.rxd.level).toBe(1);
    const out = registersOf(wirings[name].transmit);
    bench.write(out.port, out.mask);
    bench.write(out.ddr, out.mask);
    expect(bench.wires.rxd.level).toBe(highIsMark);
    bench.write(out.port, 0);
    expect(bench.wires.rxd.level).toBe(1 - highIsMark);
    const pc = { party: "pc", at: undefined } as const;
    for (const line of ["rts", "dtr"] as const) {
      const { pin, mask } = registersOf(wirings[name][line]);
      expect((bench.read(pin) & mask) !== 0).toBe(on === 0);
      bench.wires[line].drive(0, pc);
      expect((bench.read(pin) & mask) !== 0).toBe(on === 1);
    }
  });

  test("an edge carries the place that the engine says is running", () => {
    const bench = onBench(name);
    const { ddr, mask } = registersOf(wirings[name].clock);
    const place = { file: "mouse.c", start: 12, end: 19 };
    bench.chip.core.place = place as never;
    bench.write(ddr, mask);
    expect(bench.wires.edges.at(-1)?.cause).toEqual({ party: "firmware", at: place });
  });
});

// Vectors and bits: register summaries of the datasheets ("External Interrupts"), from memory.
const external: readonly {
  chip: WiredChip;
  pin: string;
  sense: readonly [string, readonly [high: string, low: string]];
  mask: readonly [string, string];
  flag: readonly [string, string];
  vector: string;
}[] = [
  {
    chip: "atmega328p",
    pin: "PD2",
    sense: ["EICRA", ["ISC01", "ISC00"]],
    mask: ["EIMSK", "INT0"],
    flag: ["EIFR", "INTF0"],
    vector: "INT0_vect",
  },
  {
    chip: "atmega328p",
    pin: "PD3",
    sense: ["EICRA", ["ISC11", "ISC10"]],
    mask: ["EIMSK", "INT1"],
    flag: ["EIFR", "INTF1"],
    vector: "INT1_vect",
  },
  {
    chip: "atmega168",
    pin: "PD2",
    sense: ["EICRA", ["ISC01", "ISC00"]],
    mask: ["EIMSK", "INT0"],
    flag: ["EIFR", "INTF0"],
    vector: "INT0_vect",
  },
  {
    chip: "atmega32u4",
    pin: "PD0",
    sense: ["EICRA", ["ISC01", "ISC00"]],
    mask: ["EIMSK", "INT0"],
    flag: ["EIFR", "INTF0"],
    vector: "INT0_vect",
  },
  {
    chip: "atmega32u4",
    pin: "PE6",
    sense: ["EICRB", ["ISC61", "ISC60"]],
    mask: ["EIMSK", "INT6"],
    flag: ["EIFR", "INTF6"],
    vector: "INT6_vect",
  },
  {
    chip: "atmega2560",
    pin: "PE4",
    sense: ["EICRB", ["ISC41", "ISC40"]],
    mask: ["EIMSK", "INT4"],
    flag: ["EIFR", "INTF4"],
    vector: "INT4_vect",
  },
  {
    chip: "atmega2560",
    pin: "PD3",
    sense: ["EICRA", ["ISC31", "ISC30"]],
    mask: ["EIMSK", "INT3"],
    flag: ["EIFR", "INTF3"],
    vector: "INT3_vect",
  },
  {
    chip: "attiny25",
    pin: "PB2",
    sense: ["MCUCR", ["ISC01", "ISC00"]],
    mask: ["GIMSK", "INT0"],
    flag: ["GIFR", "INTF0"],
    vector: "INT0_vect",
  },
  {
    chip: "attiny45",
    pin: "PB2",
    sense: ["MCUCR", ["ISC01", "ISC00"]],
    mask: ["GIMSK", "INT0"],
    flag: ["GIFR", "INTF0"],
    vector: "INT0_vect",
  },
  {
    chip: "attiny85",
    pin: "PB2",
    sense: ["MCUCR", ["ISC01", "ISC00"]],
    mask: ["GIMSK", "INT0"],
    flag: ["GIFR", "INTF0"],
    vector: "INT0_vect",
  },
];

// ISCn1:0 of 1 any change, 2 falling edge, 3 rising edge: table "Interrupt Sense Control" of the datasheets.
const senses = [
  { code: 1, falls: true, rises: true },
  { code: 2, falls: true, rises: false },
  { code: 3, falls: false, rises: true },
];

describe.each(external)("$flag.1 of $chip", ({ chip, pin, sense, mask, flag, vector }) => {
  function ready(code: number) {
    const bench = onBench(chip, { clock: pin, data: chip.startsWith("attiny") ? "PB0" : "PB1" });
    bench.wires.clock.pullUp("mouse", true, pull);
    const [high, low] = sense[1];
    bench.write(sense[0], (code & 2 ? bench.bits(high) : 0) | (code & 1 ? bench.bits(low) : 0));
    const move = (level: 0 | 1) => {
      bench.wires.clock.drive("mouse", level === 0 ? "low" : "released", pull);
      bench.pass(1);
    };
    return { bench, move, flagMask: bench.bits(flag[1]) };
  }

  test.each(senses)("sense $code", ({ code, falls, rises }) => {
    const { bench, move, flagMask } = ready(code);
    bench.write(mask[0], bench.bits(mask[1]));
    move(0);
    expect(bench.pending).toBe(falls ? vector : undefined);
    bench.chip.takeInterrupt();
    expect(bench.read(flag[0]) & flagMask).toBe(0);
    move(1);
    expect(bench.pending).toBe(rises ? vector : undefined);
  });

  test("an edge is kept while the interrupt is not enabled, until a 1 is written to its flag", () => {
    const { bench, move, flagMask } = ready(2);
    move(0);
    expect(bench.read(flag[0]) & flagMask).toBe(flagMask);
    expect(bench.pending).toBeUndefined();
    bench.write(mask[0], bench.bits(mask[1]));
    expect(bench.pending).toBe(vector);
    bench.write(flag[0], 0);
    expect(bench.pending).toBe(vector);
    bench.write(flag[0], flagMask);
    expect(bench.pending).toBeUndefined();
  });

  test("a low level asks as long as it lasts", () => {
    const { bench, move } = ready(0);
    bench.write(mask[0], bench.bits(mask[1]));
    move(0);
    bench.chip.takeInterrupt();
    expect(bench.pending).toBe(vector);
    move(1);
    expect(bench.pending).toBeUndefined();
  });
});

// Groups: "Pin Change Interrupt Request" in the datasheets; ATmega2560 has PCINT8 on PE0 and PCINT9 on PJ0.
const changes: readonly {
  chip: WiredChip;
  pin: string;
  mask: readonly [string, string];
  enable: readonly [string, string];
  vector: string;
}[] = [
  {
    chip: "atmega328p",
    pin: "PB4",
    mask: ["PCMSK0", "PCINT4"],
    enable: ["PCICR", "PCIE0"],
    vector: "PCINT0_vect",
  },
  {
    chip: "atmega328p",
    pin: "PC0",
    mask: ["PCMSK1", "PCINT8"],
    enable: ["PCICR", "PCIE1"],
    vector: "PCINT1_vect",
  },
  {
    chip: "atmega328p",
    pin: "PD4",
    mask: ["PCMSK2", "PCINT20"],
    enable: ["PCICR", "PCIE2"],
    vector: "PCINT2_vect",
  },
  {
    chip: "atmega168",
    pin: "PD7",
    mask: ["PCMSK2", "PCINT23"],
    enable: ["PCICR", "PCIE2"],
    vector: "PCINT2_vect",
  },
  {
    chip: "atmega32u4",
    pin: "PB7",
    mask: ["PCMSK0", "PCINT7"],
    enable: ["PCICR", "PCIE0"],
    vector: "PCINT0_vect",
  },
  {
    chip: "atmega2560",
    pin: "PE0",
    mask: ["PCMSK1", "PCINT8"],
    enable: ["PCICR", "PCIE1"],
    vector: "PCINT1_vect",
  },
  {
    chip: "atmega2560",
    pin: "PJ0",
    mask: ["PCMSK1", "PCINT9"],
    enable: ["PCICR", "PCIE1"],
    vector: "PCINT1_vect",
  },
  {
    chip: "atmega2560",
    pin: "PK7",
    mask: ["PCMSK2", "PCINT23"],
    enable: ["PCICR", "PCIE2"],
    vector: "PCINT2_vect",
  },
  {
    chip: "attiny25",
    pin: "PB3",
    mask: ["PCMSK", "PCINT3"],
    enable: ["GIMSK", "PCIE"],
    vector: "PCINT0_vect",
  },
  {
    chip: "attiny45",
    pin: "PB4",
    mask: ["PCMSK", "PCINT4"],
    enable: ["GIMSK", "PCIE"],
    vector: "PCINT0_vect",
  },
  {
    chip: "attiny85",
    pin: "PB3",
    mask: ["PCMSK", "PCINT3"],
    enable: ["GIMSK", "PCIE"],
    vector: "PCINT0_vect",
  },
];

test.each(changes)(
  "$chip: a change of RTS at $pin is pending as $vector",
  ({ chip, pin, mask, enable, vector }) => {
    const bench = onBench(chip, { rts: pin, dtr: undefined });
    const pc = { party: "pc", at: undefined } as const;
    bench.write(enable[0], bench.bits(enable[1]));
    bench.wires.rts.drive(0, pc);
    expect(bench.pending).toBeUndefined();
    bench.write(mask[0], bench.bits(mask[1]));
    for (const level of [1, 0] as const) {
      bench.wires.rts.drive(level, pc);
      expect(bench.pending).toBe(vector);
      bench.chip.takeInterrupt();
      expect(bench.pending).toBeUndefined();
    }
    bench.write(enable[0], 0);
    bench.wires.rts.drive(1, pc);
    expect(bench.pending).toBeUndefined();
  },
);

test("of two handlers that are due the one with the lower vector is entered first", () => {
  // "Interrupts": the lower the address, the higher the priority.
  const bench = onBench("atmega328p");
  bench.write("PCICR", bench.bits("PCIE2"));
  bench.write("PCMSK2", bench.bits("PCINT20"));
  bench.write("EICRA", bench.bits("ISC01"));
  bench.write("EIMSK", bench.bits("INT0"));
  bench.wires.rts.drive(0, { party: "pc", at: undefined });
  bench.wires.clock.drive("mouse", "low", pull);
  expect(bench.pending).toBe("INT0_vect");
  bench.chip.takeInterrupt();
  expect(bench.pending).toBe("PCINT2_vect");
});
