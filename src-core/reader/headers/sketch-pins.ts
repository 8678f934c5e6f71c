import { analogNumbers, type BoardPin, boardPins } from "../../model/chips/board-numbers.ts";
import type { AvrChip } from "../../model/chips/chip.ts";
import { registerNamed } from "../../model/chips.ts";
import { define, type HeaderText } from "./header-target.ts";

/** Codes of the port letters in the sketch core's header. */
const PORT_CODES: Readonly<Record<string, number>> = {
  ...{ A: 1, B: 2, C: 3, D: 4, E: 5, F: 6, G: 7, H: 8, J: 10, K: 11, L: 12 },
};

/** Functions of pins that have a name of their own in the sketch core. */
const NAMED_FUNCTIONS: Readonly<Record<string, string>> = {
  ...{ SS: "SS", MOSI: "MOSI", MISO: "MISO", SCK: "SCK", SDA: "SDA", SCL: "SCL" },
};

/**
 * The board's pin header: numbers of its pins, and the macros that lead from a number to interrupt, port and
 * mask. They are conditional expressions, so that constant numbers give constants.
 */
export const sketchPins: HeaderText = ({ avr }) =>
  `#pragma once\n#include <stdint.h>\n${avr === undefined ? "" : pinsText(avr)}`;

function pinsText(chip: AvrChip): string {
  const analog = analogNumbers(chip);
  const pins = boardPins(chip);
  const count = 1 + Math.max(-1, ...pins.map(({ number }) => number));
  let text = define("NUM_DIGITAL_PINS", count);
  text += define("NUM_ANALOG_INPUTS", analog.size - Object.keys(chip.analogOnly).length);
  if (chip.ledPin !== undefined) text += define("LED_BUILTIN", chip.ledPin);
  for (const [name, number] of analog) {
    text += define(`PIN_${name}`, `(${number})`);
    text += `static const uint8_t ${name} = PIN_${name};\n`;
  }
  for (const [name, role] of Object.entries(NAMED_FUNCTIONS)) {
    const number = pins.find(({ pin }) => pin.functions.includes(role))?.number;
    if (number !== undefined) text += `static const uint8_t ${name} = ${number};\n`;
  }
  return text + interruptMacro(chip, pins) + portMacros(chip, pins) + pinChangeMacros(chip, pins);
}

/** `(p) == 2 ? a : (p) == 3 ? b : otherwise`, cases of equal value beside each other. */
function choose(cases: readonly (readonly [number, string | number])[], otherwise: string): string {
  return `(${cases.map(([number, value]) => `(p) == ${number} ? ${value} : `).join("")}${otherwise})`;
}

function interruptMacro(chip: AvrChip, pins: readonly BoardPin[]): string {
  const cases = chip.sketchInterrupts.flatMap((name, interrupt) => {
    const found = pins.find(({ pin }) => pin.name === name);
    return found === undefined ? [] : [[found.number, interrupt] as const];
  });
  return define("digitalPinToInterrupt(p)", choose(cases, "NOT_AN_INTERRUPT"));
}

function portMacros(chip: AvrChip, pins: readonly BoardPin[]): string {
  const codes = pins.map(({ number, pin }) => [number, PORT_CODES[pin.port] ?? 0] as const);
  const masks = pins.map(({ number, pin }) => [number, `0x${(1 << pin.bit).toString(16)}`] as const);
  const registers = (kind: "pinRegister" | "directionRegister" | "outputRegister") =>
    choose(
      chip.ports.map((port) => [PORT_CODES[port.letter] ?? 0, `&${port[kind].name}`] as const),
      "(volatile uint8_t *)0",
    );
  return (
    define("digitalPinToPort(p)", choose(codes, "NOT_A_PORT")) +
    define("digitalPinToBitMask(p)", choose(masks, "0")) +
    define("portOutputRegister(p)", registers("outputRegister")) +
    define("portInputRegister(p)", registers("pinRegister")) +
    define("portModeRegister(p)", registers("directionRegister")) +
    define("analogInPinToBit(p)", "(p)")
  );
}

function pinChangeMacros(chip: AvrChip, pins: readonly BoardPin[]): string {
  const changing = pins.flatMap(({ number, pin }) =>
    pin.pinChange === undefined ? [] : [{ number, change: pin.pinChange }],
  );
  const control = changing[0]?.change.enable.register;
  if (control === undefined || registerNamed(chip, control) === undefined) return "";
  const none = "(volatile uint8_t *)0";
  return (
    define(
      "digitalPinToPCICR(p)",
      choose(
        changing.map(({ number }) => [number, `&${control}`] as const),
        none,
      ),
    ) +
    define(
      "digitalPinToPCICRbit(p)",
      choose(
        changing.map(({ number, change }) => [number, change.enable.bit] as const),
        "0",
      ),
    ) +
    define(
      "digitalPinToPCMSK(p)",
      choose(
        changing.map(({ number, change }) => [number, `&${change.mask.register}`] as const),
        none,
      ),
    ) +
    define(
      "digitalPinToPCMSKbit(p)",
      choose(
        changing.map(({ number, change }) => [number, change.mask.bit] as const),
        "0",
      ),
    )
  );
}
