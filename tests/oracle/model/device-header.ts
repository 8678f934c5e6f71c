import { execFileSync } from "node:child_process";

/** What avr-libc says of a chip: macros of the device header itself, and those of the headers around it. */
export interface DeviceHeader {
  /** Name and replacement of every macro, in the order of definition. */
  readonly macros: ReadonlyMap<string, string>;
  /** Names that the device header (avr/io*.h) defines, without those of the headers that all chips share. */
  readonly ownNames: readonly string[];
}

export interface HeaderRegister {
  readonly address: number;
  readonly width: 8 | 16;
}

/** Files that every chip includes besides its own. */
const SHARED = /\/(io|sfr_defs|portpins|common|version|fuse|lock|inttypes|stdint|builtins)\.h$/;

const IO_OFFSET = 0x20;

/** `MISO_DDR` says which register the pin of a function belongs to. */
const FUNCTION_OF_PIN = /_(PIN|DDR|PORT)$/;

/** Preprocesses `#include <avr/io.h>` for a chip. */
export function deviceHeader(chip: string): DeviceHeader {
  const text = execFileSync("avr-gcc", [`-mmcu=${chip}`, "-E", "-dD", "-x", "c", "-"], {
    input: "#include <avr/io.h>\n",
    encoding: "utf8",
    maxBuffer: 2 ** 26,
  });
  const macros = new Map<string, string>();
  const ownNames: string[] = [];
  let file = "";
  for (const line of text.split("\n")) {
    const marker = /^# \d+ "([^"]*)"/.exec(line);
    if (marker !== null) file = marker[1] ?? "";
    const definition = /^#define (\w+)(\([^)]*\))?\s*(.*?)\s*$/.exec(line);
    if (definition === null) continue;
    const [, name = "", parameters, replacement = ""] = definition;
    if (parameters !== undefined && !replacement.startsWith("_") && !isValue(parameters)) continue;
    macros.set(name, replacement === "" && parameters !== undefined ? parameters : replacement);
    if (/\/avr\/io/.test(file) && !SHARED.test(file)) ownNames.push(name);
  }
  return { macros, ownNames };
}

/** `#define RAMSTART (0x100)` is no function: what stands in the brackets is a value. */
function isValue(parameters: string): boolean {
  return /^\((0[xX])?[0-9a-fA-F]+\)$/.test(parameters);
}

/** Registers by name: every macro that stands for one. */
export function headerRegisters({ macros, ownNames }: DeviceHeader): ReadonlyMap<string, HeaderRegister> {
  const registers = new Map<string, HeaderRegister>();
  for (const [name, replacement] of macros) {
    const place = /^_SFR_(IO|MEM)(8|16)\s*\(\s*(0[xX][0-9a-fA-F]+)\s*\)$/.exec(replacement);
    if (place === null) continue;
    const [, space, width, address] = place;
    registers.set(name, {
      address: Number(address?.toLowerCase()) + (space === "IO" ? IO_OFFSET : 0),
      width: width === "16" ? 16 : 8,
    });
  }
  // Older headers name a register by another one: `#define UCSRC UBRRH`.
  for (const name of ownNames) {
    const other = registers.get(macros.get(name) ?? "");
    if (other !== undefined && !FUNCTION_OF_PIN.test(name)) registers.set(name, other);
  }
  return registers;
}

/** The number that a macro stands for, through other macros; undefined where it is none. */
export function numberOf({ macros }: DeviceHeader, name: string): number | undefined {
  let text = macros.get(name);
  for (let depth = 0; text !== undefined && depth < 4; depth++) {
    const bare = text.replace(/^\((.*)\)$/, "$1").trim();
    if (/^(0[xX][0-9a-fA-F]+|\d+)$/.test(bare)) return Number(bare.toLowerCase());
    text = macros.get(bare);
  }
  return undefined;
}
