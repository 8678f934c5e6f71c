import type { DataModel } from "../../reader/types/types.ts";
import type { TargetMemory } from "../outcome.ts";
import type { FormatArguments } from "./format-arguments.ts";
import { type Directive, formatParts } from "./format-directive.ts";
import { floatingText } from "./format-floating.ts";
import { ascii, lengthAt, readBytes } from "./target-text.ts";

interface Job {
  readonly memory: TargetMemory;
  readonly model: DataModel;
  readonly arguments: FormatArguments;
}

/** A directive whose width and precision are known. */
interface Settled extends Directive {
  readonly width: number;
  readonly precision: number | undefined;
}

/**
 * What a format makes of its arguments: C11 7.21.6.1. On AVR as avr-libc's default vfprintf does it: the output ends
 * at a `*`, `ll` or `z`, and a `?` stands for a floating number (its manual, stdio.h).
 */
export function formatted(format: readonly number[], job: Job): readonly number[] {
  const output: number[] = [];
  for (const part of formatParts(format)) {
    const bytes = part.kind === "plain" ? part.bytes : converted(part.directive, job);
    if (bytes === undefined) break;
    for (const byte of bytes) output.push(byte);
  }
  return output;
}

/** Undefined where the output ends. */
function converted(directive: Directive, job: Job): readonly number[] | undefined {
  const settled = settle(directive, job);
  if (settled === undefined) return undefined;
  const { conversion, precision } = settled;
  switch (conversion) {
    case "%":
      return ascii("%");
    case "c":
      return padded(settled, [Number(job.arguments.integer(job.model.int / 8) & 0xffn)]);
    case "s":
    case "S": {
      const from = Number(job.arguments.integer(job.model.pointer / 8));
      const length =
        precision === undefined ? lengthAt(job.memory, from) : lengthAt(job.memory, from, precision);
      return padded(settled, readBytes(job.memory, from, length));
    }
    case "d":
    case "i":
      return signedNumber(settled, job);
    case "u":
    case "o":
    case "x":
    case "X":
    case "p":
      return unsignedNumber(settled, job);
    case "e":
    case "E":
    case "f":
    case "F":
    case "g":
    case "G": {
      const value = job.arguments.floating();
      if (job.model.name === "avr") return padded(settled, ascii("?"));
      return digits(
        settled,
        floatingText(value, settled),
        signOf(settled, value < 0 || Object.is(value, -0)),
      );
    }
    default:
      return undefined;
  }
}

function settle(directive: Directive, { model, arguments: taken }: Job): Settled | undefined {
  const { width, precision, length } = directive;
  const isAvr = model.name === "avr";
  if (isAvr && (width === "*" || precision === "*" || length === "ll" || length === "z")) return undefined;
  const next = (): number => Number(BigInt.asIntN(model.int, taken.integer(model.int / 8)));
  const wide = width === "*" ? next() : (width ?? 0);
  const exact = precision === "*" ? next() : precision;
  return {
    ...directive,
    left: directive.left || wide < 0,
    width: Math.abs(wide),
    precision: exact !== undefined && exact < 0 ? undefined : exact,
  };
}

function integerBytes({ length }: Directive, model: DataModel): number {
  return length === "ll" ? 8 : (length === "l" ? model.long : model.int) / 8;
}

function signOf({ plus, space }: Directive, negative: boolean): string {
  return negative ? "-" : plus ? "+" : space ? " " : "";
}

function signedNumber(directive: Settled, { model, arguments: taken }: Job): readonly number[] {
  const bytes = integerBytes(directive, model);
  const value = BigInt.asIntN(8 * bytes, taken.integer(bytes));
  const magnitude = (value < 0n ? -value : value).toString();
  return integerDigits(directive, magnitude, signOf(directive, value < 0n), model);
}

function unsignedNumber(directive: Settled, { model, arguments: taken }: Job): readonly number[] {
  const { conversion } = directive;
  const isPointer = conversion === "p";
  const value = taken.integer(isPointer ? model.pointer / 8 : integerBytes(directive, model));
  if (conversion === "u") {
    // avr-libc's puts the sign there that C11 7.21.6.1p6 keeps for signed conversions.
    const sign = model.name === "avr" ? signOf(directive, false) : "";
    return integerDigits(directive, value.toString(), sign, model);
  }
  const alternate = (directive.alternate || isPointer) && value !== 0n;
  if (conversion === "o") {
    const text = value.toString(8);
    return integerDigits(directive, alternate ? `0${text}` : text, "", model);
  }
  const text = `${alternate ? "0x" : ""}|${value.toString(16)}`;
  const [prefix = "", hex = ""] = (conversion === "X" ? text.toUpperCase() : text).split("|");
  return integerDigits(directive, hex, prefix, model);
}

function integerDigits(
  directive: Settled,
  text: string,
  prefix: string,
  model: DataModel,
): readonly number[] {
  const { precision, conversion, alternate } = directive;
  if (precision === undefined) return digits(directive, text, prefix);
  // No digits at all: C11 7.21.6.1p8. avr-libc's gives one all the same.
  const isEmpty =
    text === "0" && precision === 0 && model.name !== "avr" && !(alternate && conversion === "o");
  return padded(directive, ascii(prefix + (isEmpty ? "" : text.padStart(precision, "0"))));
}

/** Digits behind a sign or prefix, filled up with zeros between them where the flag says so. */
function digits(directive: Settled, text: string, prefix: string): readonly number[] {
  const { zero, left, width } = directive;
  const filled = zero && !left ? text.padStart(width - prefix.length, "0") : text;
  return padded(directive, ascii(prefix + filled));
}

function padded({ width, left }: Settled, bytes: readonly number[]): readonly number[] {
  const blanks = new Array<number>(Math.max(0, width - bytes.length)).fill(0x20);
  return left ? [...bytes, ...blanks] : [...blanks, ...bytes];
}
