import { bitMeaning, bitMeaningConfidence, bitMeaningSource } from "../model/chips/bit-meanings.ts";
import type { Register, RegisterBit } from "../model/chips/chip.ts";
import { formatConfidence, formatSource } from "../model/sources.ts";
import type { TypedExpression } from "../reader/typed/nodes.ts";
import { innermost } from "./around.ts";
import { type Explanation, explanation, type Telling } from "./explanation.ts";
import { pinRolesOf } from "./pin.ts";
import type { Place } from "./place.ts";
import { type RegisterUse, registerOf, registerUse } from "./register-use.ts";
import { timerLine } from "./timer.ts";

/** A register of the chip, or a value that is written to one or masks one: its bits by name. */
export function explainRegister(place: Place): Explanation | undefined {
  const inner = innermost(place);
  if (inner === undefined) return undefined;
  const named = namedRegister(place, inner.expression);
  if (named !== undefined) return explanation(inner.span, named.heading, named.lines);
  const use = registerUse(place);
  if (use === undefined) return undefined;
  const { register, operator, value } = use;
  const figure = isNumber(register) ? `${value} (${hex(value, register)})` : hex(value, register);
  return explanation(use.span, `${register.name} ${operator} ${figure}`, [
    ...linesOf(place, use),
    timerLine(place, register.name),
  ]);
}

/** The register itself, wherever its name stands. */
export function namedRegister(place: Place, expression: TypedExpression): Telling | undefined {
  const register = registerOf(place, expression);
  if (register === undefined) return undefined;
  const { name, address, group, width } = register;
  const heading = `${name}: ${width}-bit register at 0x${address.toString(16).toUpperCase()} (${groupText(group)})`;
  if (isNumber(register)) return { heading, lines: [timerLine(place, name)] };
  return {
    heading,
    lines: [bitList(place, register.bits), timerLine(place, name), sourceLine(register.bits)],
  };
}

function linesOf(place: Place, { register, operator, value }: RegisterUse): readonly string[] {
  if (isNumber(register)) return [];
  const ones = register.bits.filter(({ bit }) => (value & (1 << bit)) !== 0);
  const zeros = register.bits.filter(({ bit }) => (value & (1 << bit)) === 0);
  const shown = (words: string, bits: readonly RegisterBit[], rest: string): readonly string[] =>
    bits.length === 0 ? [rest] : [`${words}\n${bitList(place, bits)}`, rest, sourceLine(bits)];
  switch (operator) {
    case "=":
      return shown("Bits that are 1:", ones, ones.length === 0 ? "All bits are 0." : "All others are 0.");
    case "|=":
      return shown("Sets to 1:", ones, "The other bits stay.");
    case "&=":
      return shown("Clears to 0:", zeros, "The other bits stay.");
    case "^=":
      return shown("Turns over:", ones, "The other bits stay.");
    case "&":
      return shown("Looks at:", ones, "");
    default:
      return [];
  }
}

/** One line for each bit, from the highest down; several names of one bit on one line. */
function bitList(place: Place, bits: readonly RegisterBit[]): string {
  const numbers = [...new Set(bits.map(({ bit }) => bit))].sort((a, b) => b - a);
  return numbers
    .map((number) => {
      const names = bits.filter(({ bit }) => bit === number).map(({ name }) => name);
      const known = names.find((name) => bitMeaning(name) !== undefined);
      const meaning = meaningOf(place, known ?? names[0] ?? "");
      const shown = [...new Set([known ?? names[0], ...names])].map((name) => `\`${name}\``).join(" / ");
      return `- ${shown} (bit ${number})${meaning === undefined ? "" : `: ${meaning}`}`;
    })
    .join("\n");
}

function meaningOf(place: Place, name: string): string | undefined {
  const meaning = bitMeaning(name);
  const pin = pinOfBit(place, name);
  const roles = pin === undefined ? undefined : pinRolesOf(place.facts, pin);
  return roles === undefined ? meaning : `${meaning ?? pin} (${roles})`;
}

function pinOfBit({ facts }: Place, name: string): string | undefined {
  const port = /^(?:PORT|DD|PIN)([A-L][0-7])$/.exec(name)?.[1];
  if (port !== undefined) return `P${port}`;
  const { chip } = facts.board;
  return chip?.kind === "avr" ? chip.pins.find(({ pinChange }) => pinChange?.name === name)?.name : undefined;
}

function sourceLine(bits: readonly RegisterBit[]): string {
  if (!bits.some(({ name }) => bitMeaning(name) !== undefined)) return "";
  return `Source: ${formatSource(bitMeaningSource)}; ${formatConfidence(bitMeaningConfidence)}.`;
}

/** A register that holds a number: its bits are called like itself. */
function isNumber({ name, group, bits }: Register): boolean {
  if (group === "gpio" || group === "pcint") return false;
  return bits.every((each) => name.startsWith(each.name.replace(/_?\d+$/, "")));
}

const GROUPS: Readonly<Record<string, string>> = {
  gpio: "port pins",
  usart: "USART",
  extint: "external interrupts",
  pcint: "pin-change interrupts",
  cpu: "processor core",
  adc: "analogue inputs",
  comparator: "analogue comparator",
  clock: "system clock",
  sleep: "power",
  spi: "SPI",
  twi: "two-wire interface",
  usi: "USI",
  usb: "USB",
  eeprom: "EEPROM",
};

function groupText(group: string): string {
  return GROUPS[group] ?? group.replace(/(\d)$/, " $1");
}

function hex(value: number, { width }: Register): string {
  return `0x${value
    .toString(16)
    .toUpperCase()
    .padStart(width / 4, "0")}`;
}
