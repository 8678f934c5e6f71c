import type { AvrChip, Chip } from "../../model/chips/chip.ts";
import type { Language } from "../lexer/scanner.ts";

/** What the text of a header depends on. */
export interface HeaderTarget {
  /** Its registers and pins; undefined where the model does not know them. */
  readonly avr: AvrChip | undefined;
  /** Somebody said which chip it is. */
  readonly isNamed: boolean;
  /** AVR headers exist for it: an AVR chip of any family, or a chip that is not known yet. */
  readonly isAvr: boolean;
  readonly intBits: 16 | 32;
  readonly language: Language;
}

export function headerTarget(chip: Chip | undefined, language: Language): HeaderTarget {
  const isAvr = chip === undefined || chip.family === "avr" || chip.family === "avr-dx";
  return {
    avr: chip?.kind === "avr" ? chip : undefined,
    isNamed: chip !== undefined,
    isAvr,
    intBits: chip?.dataModel === "ilp32" ? 32 : 16,
    language,
  };
}

/** Makes a header's text; undefined where the target has no such header. */
export type HeaderText = (target: HeaderTarget) => string | undefined;

/** A header of AVR chips alone. */
export function avrOnly(text: string | ((target: HeaderTarget) => string)): HeaderText {
  return (target) => {
    if (!target.isAvr) return undefined;
    return typeof text === "string" ? text : text(target);
  };
}

/** A header of C++ alone. */
export function cppOnly(text: string): HeaderText {
  return (target) => (target.language === "c++" ? text : undefined);
}

export function define(name: string, value: string | number): string {
  return `#define ${name} ${value}\n`;
}
