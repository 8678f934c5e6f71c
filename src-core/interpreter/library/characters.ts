import { numberAt, type Subject } from "./values.ts";

type Test = (character: number) => boolean;

const between =
  (first: number, last: number): Test =>
  (character) =>
    character >= first && character <= last;

const isUpper = between(0x41, 0x5a);
const isLower = between(0x61, 0x7a);
const isDigit = between(0x30, 0x39);
const isGraph = between(0x21, 0x7e);
const isAscii = between(0, 0x7f);
const isAlpha: Test = (character) => isUpper(character) || isLower(character);
const isAlnum: Test = (character) => isAlpha(character) || isDigit(character);
const isBlank: Test = (character) => character === 0x20 || character === 0x09;
const isHex: Test = (character) =>
  isDigit(character) || between(0x41, 0x46)(character) || between(0x61, 0x66)(character);
const isControl: Test = (character) => between(0, 0x1f)(character) || character === 0x7f;
const isPunct: Test = (character) => isGraph(character) && !isAlnum(character);

/** White space of the C locale: C11 7.4.1.10. */
export const isSpace: Test = (character) => character === 0x20 || between(0x09, 0x0d)(character);

export function toLower(character: number): number {
  return isUpper(character) ? character + 0x20 : character;
}

export function toUpper(character: number): number {
  return isLower(character) ? character - 0x20 : character;
}

/** Tests of C11 7.4.1 in the C locale, avr-libc's isascii, and the sketch core's names for them. */
const tests: Readonly<Record<string, Test>> = {
  isalnum: isAlnum,
  isalpha: isAlpha,
  isascii: isAscii,
  isblank: isBlank,
  iscntrl: isControl,
  isdigit: isDigit,
  isgraph: isGraph,
  islower: isLower,
  isprint: between(0x20, 0x7e),
  ispunct: isPunct,
  isspace: isSpace,
  isupper: isUpper,
  isxdigit: isHex,
  isAlphaNumeric: isAlnum,
  isAlpha,
  isAscii,
  isWhitespace: isBlank,
  isControl,
  isDigit,
  isGraph,
  isLowerCase: isLower,
  isPrintable: between(0x20, 0x7e),
  isPunct,
  isSpace,
  isUpperCase: isUpper,
  isHexadecimalDigit: isHex,
};

/** Kinds and cases of characters. Tests give 1 for yes: the standard says no more than that it is not 0. */
export const characterFunctions: Subject = {
  ...Object.fromEntries(
    Object.entries(tests).map(([name, test]) => [
      name,
      (parameters: readonly (number | bigint)[]) => (test(numberAt(parameters, 0)) ? 1 : 0),
    ]),
  ),
  tolower: (parameters) => toLower(numberAt(parameters, 0)),
  toupper: (parameters) => toUpper(numberAt(parameters, 0)),
  toascii: (parameters) => numberAt(parameters, 0) & 0x7f,
};
