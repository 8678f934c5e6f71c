import { describe, expect, test } from "vitest";
import { avrChipNamed } from "../../../../src-core/model/chips.ts";
import { complaints, preprocessed } from "./check-syntax.ts";
import { prototypes, readWithStandIns, spell } from "./stand-in-text.ts";

/*
 * Our sketch core header beside the core's own (Debian package arduino-core-avr), both in one program that
 * the compiler has to accept: the same constants, the same macros on sample arguments, the same prototypes.
 */
const core = "/usr/share/arduino/hardware/arduino/avr";
const boards = [
  { chip: "atmega328p", variant: "standard" },
  { chip: "atmega32u4", variant: "leonardo" },
  { chip: "atmega2560", variant: "mega" },
];
const common = ["-DF_CPU=16000000UL", "-DARDUINO=10819", "-DARDUINO_ARCH_AVR", "-O1"];
const usb = ["-DUSB_VID=0x1234", "-DUSB_PID=0x0001"];

function options(chip: string, variant: string): readonly string[] {
  const folders = ["-I", `${core}/cores/arduino`, "-I", `${core}/variants/${variant}`];
  return [`-mmcu=${chip}`, ...common, ...usb, ...folders];
}

describe.each(boards)("the sketch core header on $chip", ({ chip, variant }) => {
  const cpp = [...options(chip, variant), "-x", "c++", "-std=gnu++11"];

  function ours(text: string): string {
    const { tokens } = readWithStandIns(chip, "c++", ["Arduino.h"], `value_begins ${text}`);
    const begin = tokens.findIndex((token) => token.text === "value_begins");
    return spell(tokens.slice(begin + 1));
  }

  test("constants and macros have the value that the real ones have", () => {
    const { macros } = readWithStandIns(chip, "c++", ["Arduino.h"]);
    const plain = macros
      .filter(({ name, parameters, definition, body }) => {
        if (parameters !== undefined || body.length === 0) return false;
        const isCore = /^<(?:Arduino|HardwareSerial|pins_arduino|Print|binary)\.h>$/.test(
          definition?.file ?? "",
        );
        return isCore && !/BUFFER_SIZE/.test(name);
      })
      .map(({ name }) => name);
    const count = Number(ours("NUM_DIGITAL_PINS"));
    const pins = Array.from({ length: count }, (_, pin) => pin);
    const calls = [
      ...["bit(3)", "bitRead(0xA5, 2)", "lowByte(0x1234)", "highByte(0x1234)", "sq(7)"],
      ...["min(3, 4)", "max(3, 4)", "abs(-5)", "constrain(12, 0, 9)", "constrain(-1, 0, 9)"],
      ...["clockCyclesPerMicrosecond()", "microsecondsToClockCycles(5)", "clockCyclesToMicroseconds(160)"],
      ...["digitalPinToInterrupt(200)"],
      ...pins.map((pin) => `digitalPinToInterrupt(${pin})`),
    ];
    const program = [...plain, ...calls].map(
      (each) => `static_assert((${ours(each)}) == (${each}), "${each}");`,
    );
    expect(plain.length).toBeGreaterThan(500);
    expect(complaints("avr-g++", cpp, `#include <Arduino.h>\n${program.join("\n")}\n`)).toBe("");
  });

  test("analogue pins have the numbers that the real header gives them", () => {
    const text = spell(readWithStandIns(chip, "c++", ["Arduino.h"]).tokens);
    const names = [...text.matchAll(/static const uint8_t (A\d+) = \( (\d+) \) ;/g)];
    expect(names.length).toBeGreaterThanOrEqual(8);
    const program = names.map(([, name, number]) => `static_assert(${name} == ${number}, "${name}");`);
    expect(complaints("avr-g++", cpp, `#include <Arduino.h>\n${program.join("\n")}\n`)).toBe("");
  });

  test("port and mask of a pin are those of the real board", () => {
    const board = avrChipNamed(chip);
    const pins = board?.pins.filter(({ boardNames }) => boardNames.some((name) => /^D\d+$/.test(name))) ?? [];
    const tables = preprocessed("avr-g++", [...cpp, "-DARDUINO_MAIN"], "#include <Arduino.h>\n");
    const tableOf = (name: string) =>
      (
        new RegExp(`${name}\\[\\] = \\{([^}]*)\\}`).exec(
          tables.replaceAll("__attribute__((__progmem__))", ""),
        )?.[1] ?? ""
      )
        .split(",")
        .map((entry) => entry.trim())
        .filter((entry) => entry !== "");
    const ports = tableOf("digital_pin_to_port_PGM");
    const masks = tableOf("digital_pin_to_bit_mask_PGM");
    const program = pins.flatMap(({ boardNames }) => {
      const pin = Number(boardNames.find((name) => /^D\d+$/.test(name))?.slice(1));
      return [
        `static_assert((${ours(`digitalPinToPort(${pin})`)}) == (${ports[pin]}), "port of ${pin}");`,
        `static_assert((${ours(`digitalPinToBitMask(${pin})`)}) == (${masks[pin]}), "mask of ${pin}");`,
      ];
    });
    expect(program.length).toBeGreaterThan(30);
    expect(
      complaints("avr-g++", [...cpp, "-D_VECTOR(N)=N"], `#include <avr/io.h>\n${program.join("\n")}\n`),
    ).toBe("");
  });

  test("prototypes agree with the real ones", () => {
    const c = [...options(chip, variant), "-x", "c", "-std=gnu11"];
    const real = preprocessed("avr-gcc", c, "#include <Arduino.h>\n");
    const all = prototypes(readWithStandIns(chip, "c", ["Arduino.h"]));
    const compared = all.filter((text) => real.includes(` ${/(\w+) \(/.exec(text)?.[1] ?? ""}(`));
    expect(compared.length).toBeGreaterThan(20);
    expect(complaints("avr-gcc", [...c, "-fpreprocessed"], `${real}\n${compared.join("\n")}\n`)).toBe("");
  });
});
