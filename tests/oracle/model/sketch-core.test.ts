import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { ucsrcValue } from "../../../src-core/model/avr-frames.ts";
import { avrChipNamed, boardPin, sketchInterruptPin } from "../../../src-core/model/chips.ts";
import { sketchCoreSetting } from "../../../src-core/model/divisors/avr-library-settings.ts";
import { parseLineFormat } from "../../../src-core/model/line-formats.ts";
import { avrC, type Compiler, sectionsOf } from "../constants/avr-compiler.ts";

const core = "/usr/share/arduino/hardware/arduino/avr";

/** Chip, the folder of its board's pin table, and how many board numbers there are (without further numbers of A0...). */
const boards = [
  ["atmega328p", "standard", 20],
  ["atmega32u4", "leonardo", 31],
  ["atmega2560", "mega", 70],
  ["attiny85", "gemma", 6],
] as const;

/** A board's pin table after avr-gcc's preprocessor. */
function pinTable(chip: string, variant: string): string {
  return execFileSync(
    "avr-gcc",
    [
      `-mmcu=${chip}`,
      "-DARDUINO_MAIN",
      "-E",
      "-P",
      `-I${core}/cores/arduino`,
      "-x",
      "c",
      `${core}/variants/${variant}/pins_arduino.h`,
    ],
    { encoding: "utf8", maxBuffer: 2 ** 26 },
  );
}

/** Array initialisers of a pin table: `digital_pin_to_port_PGM` to its entries. */
function initialisers(text: string): ReadonlyMap<string, readonly string[]> {
  const arrays = text.matchAll(/(\w+_PGM)\s*\[[^\]]*\][^={]*=\s*\{([^}]*)\}/g);
  return new Map(
    [...arrays].map(([, name = "", body = ""]) => [
      name,
      body
        .split(",")
        .map((entry) => entry.trim())
        .filter((entry) => entry !== ""),
    ]),
  );
}

/** `PD` and `(1 << (2))` make `PD2`. */
function portBits(arrays: ReadonlyMap<string, readonly string[]>): readonly string[] {
  const ports = arrays.get("digital_pin_to_port_PGM") ?? [];
  const masks = arrays.get("digital_pin_to_bit_mask_PGM") ?? [];
  return ports.map((port, index) => {
    const letter = /^P([A-L])$/.exec(port)?.[1] ?? String.fromCharCode(64 + Number(port));
    return `P${letter}${/<<\s*\(?(\d)/.exec(masks[index] ?? "")?.[1]}`;
  });
}

function compilerFor(chip: string, variant: string): Compiler {
  return {
    ...avrC,
    flags: [
      `-mmcu=${chip}`,
      "-DF_CPU=16000000UL",
      "-DARDUINO=10819",
      `-I${core}/cores/arduino`,
      `-I${core}/variants/${variant}`,
    ],
  };
}

describe.each(boards)("%s against the sketch core's variant %s", (name, variant, count) => {
  const chip = avrChipNamed(name);
  if (chip === undefined) throw new Error(`no chip ${name}`);

  test("every board number is the same port bit", () => {
    const expected = portBits(initialisers(pinTable(name, variant))).slice(0, count);
    expect(expected).toHaveLength(count);
    expect(expected.map((_, number) => boardPin(chip, String(number))?.name)).toEqual(expected);
  });

  test("A0 and so on are the same port bits, or analogue only where the table ends before them", () => {
    const text = pinTable(name, variant);
    const ports = portBits(initialisers(text));
    const analogue = [...text.matchAll(/const uint8_t (A\d+) = \(?(\d+)\)?;/g)];
    expect(analogue.length).toBeGreaterThan(0);
    for (const [, label = "", number] of analogue) {
      const found = boardPin(chip, label)?.name;
      expect([label, found]).toEqual([label, ports[Number(number)]]);
      expect(label in chip.analogOnly).toBe(found === undefined);
    }
  });

  test("attachInterrupt numbers", () => {
    const numbers = Array.from({ length: count }, (_, pin) => `digitalPinToInterrupt(${pin})`);
    const text = `#include <Arduino.h>\nconst signed char values[] __attribute__((section(".values"), used)) = { ${numbers.join(", ")} };`;
    const [values] = sectionsOf(compilerFor(name, variant), text, [".values"]);
    for (let pin = 0; pin < count; pin++) {
      const number = values?.readInt8(pin) ?? -2;
      const listed = chip.sketchInterrupts.indexOf(boardPin(chip, String(pin))?.name ?? "");
      expect([pin, number < 0 ? undefined : sketchInterruptPin(chip, number)?.name]).toEqual([
        pin,
        listed < 0 ? undefined : boardPin(chip, String(pin))?.name,
      ]);
    }
  });
});

describe("serial class of the sketch core", () => {
  const header = readFileSync(`${core}/cores/arduino/HardwareSerial.h`, "utf8");
  const source = readFileSync(`${core}/cores/arduino/HardwareSerial.cpp`, "utf8");

  test("UCSRC of every SERIAL_ constant", () => {
    const constants = [...header.matchAll(/#define SERIAL_(\d[NEO]\d) (0x[0-9A-F]+)/g)];
    expect(constants).toHaveLength(24);
    for (const [, format = "", value] of constants) {
      const parsed = parseLineFormat(format);
      expect([format, parsed && ucsrcValue(parsed)]).toEqual([format, Number(value)]);
    }
  });

  test("divisors of begin(), its own expressions compiled by avr-gcc", () => {
    const expressions = [...source.matchAll(/baud_setting = (\(F_CPU [^;]*);/g)].map(([, text = ""]) => text);
    expect(expressions).toHaveLength(2);
    const condition = /if \((\(\(F_CPU == .*baud_setting >4095\))\)/.exec(source)?.[1];
    expect(condition).toBeDefined();
    const clocks = [1_000_000, 8_000_000, 12_000_000, 16_000_000, 20_000_000];
    const bauds = [300, 1200, 2400, 4800, 9600, 57_600, 115_200, 2_000_000];
    const pairs = clocks.flatMap((clock) => bauds.map((baud) => [clock, baud] as const));
    const rows = pairs.map(([clock, baud]) => {
      const put = (text: string): string =>
        text.replaceAll("F_CPU", `${clock}UL`).replaceAll(/\bbaud\b/g, `${baud}UL`);
      const [fast = "", slow = ""] = expressions.map((text) => `(unsigned)(${put(text)})`);
      const falls = put(condition ?? "").replaceAll("baud_setting", fast);
      return `(${falls}) ? ${slow} : ${fast}, (${falls}) ? 0 : 1`;
    });
    const text = `const unsigned values[] __attribute__((section(".values"), used)) = { ${rows.join(",\n")} };`;
    const [values] = sectionsOf(avrC, text, [".values"]);
    for (const [index, [clock, baud]] of pairs.entries()) {
      const expected = [values?.readUInt16LE(index * 4), `U2X=${values?.readUInt16LE(index * 4 + 2)}`];
      const { value, sampling } = sketchCoreSetting(clock, baud);
      expect([clock, baud, value, sampling]).toEqual([clock, baud, ...expected]);
    }
  });
});
