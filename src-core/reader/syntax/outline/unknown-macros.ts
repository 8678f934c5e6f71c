import type { Scan } from "./scan.ts";
import type { Where } from "./specifiers.ts";
import { asmWords } from "./words.ts";

/** Passes over unknown macros before a name: `char PROGMEM text[]`. */
export function macrosBefore(scan: Scan, from: number, to: number): number {
  let at = from;
  while (at + 1 < to && scan.isName(at) && scan.isName(at + 1)) {
    const isLast = endsDeclarator(scan, at + 2, to);
    // `int x FAST = 1` and `int FAST x = 1` differ in what is spelt like a macro.
    if (isLast && !(isSpeltLikeMacro(scan.text(at)) && !isSpeltLikeMacro(scan.text(at + 1)))) break;
    passOverName(scan, at);
    at += 1;
  }
  return at;
}

const isSpeltLikeMacro = (name: string): boolean => name === name.toUpperCase();

function passOverName(scan: Scan, at: number): void {
  scan.note(at, at + 1, `${scan.text(at)} is not declared and was passed over.`);
  scan.hide(at);
}

/** Assembler names (`asm("r16")`) and unknown macros behind a declarator: the grammar need not see them. */
export function passOver(scan: Scan, from: number, to: number, where: Where): number {
  let at = from;
  while (at < to && (where === "file" || where === "class" || where === "block")) {
    const text = scan.text(at);
    if (asmWords.has(text) && scan.text(at + 1) === "(") {
      const end = Math.min(scan.close(at + 1, to) + 1, to);
      scan.hideRange(at, end);
      at = end;
    } else if (scan.isName(at) && endsDeclarator(scan, at + 1, to)) {
      passOverName(scan, at);
      at += 1;
    } else break;
  }
  return at;
}

function endsDeclarator(scan: Scan, at: number, to: number): boolean {
  const text = scan.text(at);
  return at < to && (text === ";" || text === "=" || text === "," || text === "{");
}
