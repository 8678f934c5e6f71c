import type { AvrChip, Pin } from "./chip.ts";

/** A number by which the sketch core's functions know a pin. */
export interface BoardPin {
  readonly number: number;
  readonly pin: Pin;
}

/** Pins by number; an analogue input that shares a digital pin has a second number there. */
export function boardPins(chip: AvrChip): readonly BoardPin[] {
  const analog = analogNumbers(chip);
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

function digitalNumber(pin: Pin): number | undefined {
  const name = pin.boardNames.find((each) => /^D\d+$/.test(each));
  return name === undefined ? undefined : Number(name.slice(1));
}

/**
 * `A0` and so on with their numbers. Boards whose first inputs count on from `A0` do so for all of them, those
 * included that share a digital pin or are inputs only.
 */
export function analogNumbers(chip: AvrChip): ReadonlyMap<string, number> {
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
