import type { ButtonName, FieldName, ReportLayout, Slot } from "../../model/layouts/layout.ts";
import type { ReportValues } from "../../model/layouts/values.ts";
import { type Axis, fits } from "../inputs/samples.ts";
import type { FoundSlot } from "../report-trial.ts";

/** An input and the bytes that came of it. */
export interface Observed {
  readonly values: ReportValues;
  readonly bytes: readonly number[];
}

/** Movements beyond these are left out one after the other, as an encoder may clip to less than its layout carries. */
const reaches = [Number.POSITIVE_INFINITY, 63, 31];

/**
 * What drives each bit of the first bytes of a report: the simplest thing that agrees with every observation. Where
 * several do, the one that the layout wants is taken.
 */
export function foundLayout(
  layout: ReportLayout,
  observed: readonly Observed[],
  axes: readonly Axis[],
  buttons: readonly ButtonName[],
): readonly (readonly FoundSlot[])[] {
  const guesses = guessesFor(axes, buttons);
  const tiers = reaches.map((within) =>
    observed.filter(({ values, bytes }) => bytes.length > 0 && fits(values, axes, within)),
  );
  return layout.bytes.map((slots, byte) =>
    slots.map((required, bit) => {
      for (const tier of tiers) {
        const seen = tier.filter(({ bytes }) => bytes.length > byte);
        const alive = guesses.filter((guess) =>
          seen.every(({ values, bytes }) => ((bytes[byte] ?? 0) >> bit) % 2 === levelOf(guess, values)),
        );
        const wanted = alive.find((guess) => isRequired(guess, required));
        const found = wanted ?? alive[0];
        if (found !== undefined && seen.length > 0) return found;
      }
      return { kind: "mixed", fields: influences(tiers[0] ?? [], byte, bit, axes, buttons) };
    }),
  );
}

type Guess = Exclude<FoundSlot, { kind: "mixed" }>;

function guessesFor(axes: readonly Axis[], buttons: readonly ButtonName[]): readonly Guess[] {
  const constants: Guess[] = [
    { kind: "constant", level: 0 },
    { kind: "constant", level: 1 },
  ];
  const ofButtons = buttons.flatMap((field): Guess[] => [
    { kind: "button", field, activeLow: false },
    { kind: "button", field, activeLow: true },
  ]);
  const ofMovements = [false, true].flatMap((inverted) =>
    [false, true].flatMap((opposite) =>
      axes.flatMap(({ field: { name, bits } }) =>
        Array.from(
          { length: Math.max(bits, 9) },
          (_, fieldBit): Guess => ({ kind: "movement", field: name, fieldBit, opposite, inverted }),
        ),
      ),
    ),
  );
  return [...constants, ...ofButtons, ...ofMovements];
}

function levelOf(guess: Guess, values: ReportValues): 0 | 1 {
  switch (guess.kind) {
    case "constant":
      return guess.level;
    case "button":
      return (values[guess.field] === true) === guess.activeLow ? 0 : 1;
    case "movement": {
      const value = values[guess.field] ?? 0;
      const isSet = ((guess.opposite ? -value : value) >> guess.fieldBit) % 2 !== 0;
      return isSet === guess.inverted ? 0 : 1;
    }
  }
}

/** Whether a guess is what the layout wants in this place. */
export function isRequired(guess: FoundSlot, required: Slot): boolean {
  switch (required.kind) {
    case "constant":
      return guess.kind === "constant" && guess.level === required.level;
    case "ignored":
      return true;
    case "overflow":
      return guess.kind === "constant" && guess.level === 0;
    case "button":
      return (
        guess.kind === "button" && guess.field === required.field && guess.activeLow === required.activeLow
      );
    case "movement": {
      // What does not fit the first part goes into the second, which rests while there is no such movement.
      if (required.part === 2) return guess.kind === "constant" && guess.level === 0;
      return (
        guess.kind === "movement" &&
        guess.field === required.field &&
        guess.fieldBit === required.fieldBit &&
        !guess.opposite &&
        !guess.inverted
      );
    }
  }
}

/** The fields on which a bit depends, as far as changing one at a time shows. */
function influences(
  observed: readonly Observed[],
  byte: number,
  bit: number,
  axes: readonly Axis[],
  buttons: readonly ButtonName[],
): readonly FieldName[] {
  const fields: readonly FieldName[] = [...axes.map(({ field }) => field.name), ...buttons];
  return fields.filter((field) => {
    const levels = observed
      .filter(({ values }) =>
        Object.keys(values).every((name) => name === field || !values[name as FieldName]),
      )
      .map(({ bytes }) => ((bytes[byte] ?? 0) >> bit) & 1);
    return levels.includes(0) && levels.includes(1);
  });
}
