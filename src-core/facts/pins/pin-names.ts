import type { Chip } from "../../model/chips/chip.ts";
import { boardPin, sketchInterruptPin, vectorNamed } from "../../model/chips.ts";
import type { PinName } from "./pin-change.ts";

/** The pin of a board number, as `pinMode` takes it: its port bit, or `#2` where the board is not known. */
export function pinOfNumber(chip: Chip | undefined, number: number): PinName {
  const pin = chip && boardPin(chip, String(number));
  return pin?.name ?? `#${number}`;
}

/**
 * The pin that a note names: `2`, `D2`, `A3` by the board's numbering, `PD2` by port. Undefined where such a
 * name means nothing without a chip, or the chip lacks the pin.
 */
export function pinOfWord(chip: Chip | undefined, word: string): PinName | undefined {
  const pin = chip && boardPin(chip, word);
  if (pin !== undefined) return pin.name;
  if (/^P[A-L][0-7]$/i.test(word)) return chip?.kind === "avr" ? undefined : word.toUpperCase();
  const number = /^D?(\d+)$/i.exec(word)?.[1];
  return number === undefined ? undefined : `#${Number(number)}`;
}

/** Analogue inputs with a number of their own come behind the digital pins, 0 to 13, on boards that have both. */
const FIRST_ANALOG = 14;

/** How people call a pin: `pin 2 (PD2)`, `PD2`, `pin 2`. */
export function pinText(chip: Chip | undefined, name: PinName): string {
  if (name.startsWith("#")) return `pin ${name.slice(1)}`;
  const boardNames =
    chip?.kind === "avr" ? chip.pins.find((pin) => pin.name === name)?.boardNames : undefined;
  const digital = boardNames?.find((each) => each.startsWith("D"))?.slice(1);
  const analog = boardNames?.find((each) => each.startsWith("A"));
  const number = analog !== undefined && Number(digital ?? FIRST_ANALOG) >= FIRST_ANALOG ? analog : digital;
  return number === undefined ? name : `${name} (pin ${number})`;
}

/** The pin whose `attachInterrupt` number this is. */
export function pinOfInterrupt(chip: Chip | undefined, number: number): PinName | undefined {
  return chip && sketchInterruptPin(chip, number)?.name;
}

/** Pins whose interrupts a vector serves; several for pin-change interrupts. */
export function pinsOfVector(chip: Chip | undefined, vector: string): readonly PinName[] {
  if (chip?.kind !== "avr") return [];
  const names: readonly string[] = vectorNamed(chip, vector)?.names ?? [vector];
  const serves = (name: string | undefined): boolean => name !== undefined && names.includes(name);
  return chip.pins
    .filter((pin) => serves(pin.externalInterrupt?.vector) || serves(pin.pinChange?.vector))
    .map((pin) => pin.name);
}
