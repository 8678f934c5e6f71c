import type { ChipFamily } from "../chips/chip.ts";
import type { Confidence, Source } from "../sources.ts";

/** One way a generator can run: another oversampling, prescaler or register width. */
export interface Sampling {
  /** As firmware would write it: `U2X=0`, `BRGH=1 BRG16=0`, `/64`. */
  readonly id: string;
  /** Samples that the receiver takes of a bit; undefined where no text says it. */
  readonly samplesPerBit: number | undefined;
  /** Smallest and largest `Setting.value`. */
  readonly registerRange: { readonly min: number; readonly max: number };
}

/** What firmware writes to get a rate. */
export interface Setting {
  /** Id of the sampling. */
  readonly sampling: string;
  /** The divisor as one integer, in the generator's own steps; `registers` tells what to write where. */
  readonly value: number;
  /** Divider before the generator, where it has one of its own. */
  readonly predivider?: number;
}

export interface RegisterValue {
  readonly name: string;
  readonly value: number;
}

/** The setting closest to a wanted rate, or why there is none. */
export type NearestBaud =
  | {
      readonly kind: "setting";
      readonly setting: Setting;
      readonly actualBaud: number;
      /** (actual / wanted - 1) x 100. */
      readonly errorPercent: number;
    }
  | { readonly kind: "out-of-range"; readonly reason: string };

/** A generator as a family file writes it down; `baudGenerator` adds the search over samplings. */
export interface BaudFormula {
  readonly id: string;
  readonly title: string;
  readonly families: readonly ChipFamily[];
  /** For hovers: `f / (16 (UBRR + 1))`. */
  readonly formula: string;
  /** What the divisor is called in the datasheet: `UBRR`. */
  readonly register: string;
  readonly samplings: readonly Sampling[];
  readonly sources: readonly Source[];
  readonly confidence: Confidence;
  /** Baud of a setting whose value is in range. */
  baudOf(clockHz: number, setting: Setting): number;
  /** The value to write for a rate, in range or not; NaN where the sampling cannot make any rate of this size. */
  valueFor(clockHz: number, baud: number, sampling: Sampling): Setting;
  registersOf(setting: Setting): readonly RegisterValue[];
}

export interface BaudGenerator extends BaudFormula {
  /** Undefined where the value is out of the register's range or the sampling is unknown. */
  actualBaud(clockHz: number, setting: Setting): number | undefined;
  /** The best setting over all samplings (the first of equally good ones), or over the one named. */
  nearest(clockHz: number, baud: number, sampling?: string): NearestBaud;
}

export function baudGenerator(formula: BaudFormula): BaudGenerator {
  const actualBaud = (clockHz: number, setting: Setting): number | undefined => {
    const sampling = formula.samplings.find(({ id }) => id === setting.sampling);
    return sampling !== undefined && isInRange(setting.value, sampling)
      ? formula.baudOf(clockHz, setting)
      : undefined;
  };
  return {
    ...formula,
    actualBaud,
    nearest(clockHz, baud, wanted) {
      const samplings = formula.samplings.filter(({ id }) => wanted === undefined || id === wanted);
      let best: NearestBaud | undefined;
      for (const sampling of samplings) {
        const found = nearestOf(formula, clockHz, baud, sampling);
        if (best === undefined || isBetter(found, best)) best = found;
      }
      return best ?? { kind: "out-of-range", reason: `${formula.title} has no sampling ${wanted ?? ""}` };
    },
  };
}

function nearestOf(formula: BaudFormula, clockHz: number, baud: number, sampling: Sampling): NearestBaud {
  const setting = formula.valueFor(clockHz, baud, sampling);
  if (!isInRange(setting.value, sampling)) {
    return { kind: "out-of-range", reason: outOfRange(formula, sampling, setting.value, baud) };
  }
  const actual = formula.baudOf(clockHz, setting);
  return { kind: "setting", setting, actualBaud: actual, errorPercent: errorPercent(actual, baud) };
}

function outOfRange(formula: BaudFormula, sampling: Sampling, value: number, baud: number): string {
  const { min, max } = sampling.registerRange;
  const needed = Number.isFinite(value) ? `would have to be ${value}` : "cannot be made";
  return `${formula.register} for ${baud} baud ${needed}; with ${sampling.id} it goes from ${min} to ${max}`;
}

function isInRange(value: number, { registerRange: { min, max } }: Sampling): boolean {
  return Number.isInteger(value) && value >= min && value <= max;
}

function isBetter(found: NearestBaud, best: NearestBaud): boolean {
  if (found.kind === "out-of-range") return false;
  return best.kind === "out-of-range" || Math.abs(found.errorPercent) < Math.abs(best.errorPercent);
}

/** (actual / wanted - 1) x 100. */
export function errorPercent(actualBaud: number, wantedBaud: number): number {
  return ((actualBaud - wantedBaud) / wantedBaud) * 100;
}

/** `numerator / denominator` to the nearest integer, halves up; exact for integers whose double fits 53 bits. */
export function roundHalfUp(numerator: number, denominator: number): number {
  return Math.floor((2 * numerator + denominator) / (2 * denominator));
}
