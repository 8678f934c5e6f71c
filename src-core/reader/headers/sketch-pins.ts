import type { AvrChip, Pin } from "../../model/chips/chip.ts";
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

interface BoardPin {
  readonly number: number;
  readonly pin: Pin;
}

/**
 * The board's pin header: numbers of its pins, and the macros that lead from a number to interrupt, port and
 * mask. They are conditional expressions, so that constant numbers give constants.
 */
export const sketchPins: HeaderText = ({ avr }) =>
  `#pragma once\n#include <stdint.h>\n${avr === undefined ? "" : pinsText(avr)}`;

function digitalNumber(pin: Pin): number | undefined {
  const name = pin.boardNames.find((each) => /^D\d+$/.test(each));
  return name === undefined ? undefined : Number(name.slice(1));
}

/** Pins by number; an analogue input that shares a digital pin has a second number there. */
function boardPins(chip: AvrChip, analog: ReadonlyMap<string, number>): readonly BoardPin[] {
  const found = new Map<number, Pin>();
  for (const pin of chip.pins) {
    const digital = digitalNumber(pin);
    if (digital !== undefined) found.set(digital, pin);
    for (const name of pin.boardNames) {
      const number = analog.get(name);
      if (number !== undefined) found.set(number, pin);
    }
  }
  return [...found]
    .map(([number, pin]) => ({ number, pin }))
    .sort((left, right) => left.number - right.number);
}

function pinsText(chip: AvrChip): string {
  const analog = analogNumbers(chip);
  const pins = boardPins(chip, analog);
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

/**
 * `A0` and so on with their numbers. Boards whose first inputs count on from `A0` do so for all of them, those
 * included that share a digital pin or are inputs only.
 */
function analogNumbers(chip: AvrChip): ReadonlyMap<string, number> {
  const own = new Map<string, number>();
  for (const pin of chip.pins) {
    const digital = digitalNumber(pin);
    for (const name of pin.boardNames)
      if (/^A\d+$/.test(name) && digital !== undefined) own.set(name, digital);
  }
  const base = own.get("A0");
  const names = [...own.keys(), ...Object.keys(chip.analogOnly)].sort(
    (left, right) => Number(left.slice(1)) - Number(right.slice(1)),
  );
  if (base === undefined || own.get("A1") !== base + 1) return own;
  return new Map(names.map((name) => [name, base + Number(name.slice(1))]));
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
