import type { Chip } from "../../model/chips/chip.ts";
import type { Language } from "../lexer/scanner.ts";
import { avrIo, sfrDefs } from "./avr-io.ts";
import { builtins, cpufunc, eeprom, interrupt, pgmspace, power, sleep, wdt } from "./avr-library.ts";
import { atomic, crc16, delay, delayBasic, parity, setbaud } from "./avr-utilities.ts";
import { type HeaderText, headerTarget } from "./header-target.ts";
import { hardwareSerial, print, stream, wString } from "./sketch-classes.ts";
import { binary, sketchCore } from "./sketch-core.ts";
import { eepromClass, softwareSerial, spi, wire } from "./sketch-libraries.ts";
import { sketchPins } from "./sketch-pins.ts";
import { assertion, ctype, errno, math, stdarg, stdio, stdlib, string } from "./standard-library.ts";
import { float, inttypes, limits, stdbool, stddef, stdint } from "./standard-types.ts";

const HEADERS: Readonly<Record<string, HeaderText>> = {
  "avr/io.h": avrIo,
  "avr/sfr_defs.h": sfrDefs,
  "avr/builtins.h": builtins,
  "avr/interrupt.h": interrupt,
  "avr/pgmspace.h": pgmspace,
  "avr/eeprom.h": eeprom,
  "avr/sleep.h": sleep,
  "avr/wdt.h": wdt,
  "avr/power.h": power,
  "avr/cpufunc.h": cpufunc,
  "util/delay.h": delay,
  "util/delay_basic.h": delayBasic,
  "util/setbaud.h": setbaud,
  "util/atomic.h": atomic,
  "util/parity.h": parity,
  "util/crc16.h": crc16,
  "assert.h": assertion,
  "ctype.h": ctype,
  "errno.h": errno,
  "float.h": float,
  "inttypes.h": inttypes,
  "limits.h": limits,
  "math.h": math,
  "stdarg.h": stdarg,
  "stdbool.h": stdbool,
  "stddef.h": stddef,
  "stdint.h": stdint,
  "stdio.h": stdio,
  "stdlib.h": stdlib,
  "string.h": string,
  "Arduino.h": sketchCore,
  "WProgram.h": sketchCore,
  "pins_arduino.h": sketchPins,
  "binary.h": binary,
  "WString.h": wString,
  "Print.h": print,
  "Stream.h": stream,
  "HardwareSerial.h": hardwareSerial,
  "SoftwareSerial.h": softwareSerial,
  "EEPROM.h": eepromClass,
  "Wire.h": wire,
  "SPI.h": spi,
};

/** C headers that C++ also knows as `<cname>`. */
const C_NAMES: ReadonlySet<string> = new Set(
  [
    "assert",
    "ctype",
    "errno",
    "float",
    "inttypes",
    "limits",
    "math",
    "stdarg",
    "stdbool",
    "stddef",
    "stdint",
  ].concat(["stdio", "stdlib", "string"]),
);

/** `<cstdint>` declares what `<stdint.h>` declares, and the types in `std` as well. */
function cppWrapper(name: string): string | undefined {
  const plain = name.startsWith("c") ? name.slice(1) : "";
  if (!C_NAMES.has(plain)) return undefined;
  const types =
    plain === "stdint" ? integerTypes() : plain === "stddef" || plain === "string" ? ["size_t"] : [];
  const using = types.map((type) => `using ::${type};`).join(" ");
  return `#pragma once\n#include <${plain}.h>\n${using === "" ? "" : `namespace std { ${using} }\n`}`;
}

function integerTypes(): readonly string[] {
  return [8, 16, 32, 64].flatMap((bits) => [`int${bits}_t`, `uint${bits}_t`]);
}

const made = new WeakMap<Chip, Map<string, string | undefined>>();
const madeWithoutChip = new Map<string, string | undefined>();

/**
 * The built-in headers of a chip by the name in `#include`: declarations, registers and macros of what firmware
 * sources include, without bodies. `chip` is undefined while it is not known: its registers then have no names.
 * Headers of other families' makers are not there.
 */
export function standIns(chip: Chip | undefined, language: Language): (name: string) => string | undefined {
  const target = headerTarget(chip, language);
  let kept = madeWithoutChip;
  if (chip !== undefined) {
    kept = made.get(chip) ?? new Map<string, string | undefined>();
    made.set(chip, kept);
  }
  return (name) => {
    const key = `${language} ${name}`;
    if (!kept.has(key)) {
      const header = Object.hasOwn(HEADERS, name) ? HEADERS[name] : undefined;
      const text = header === undefined && language === "c++" ? cppWrapper(name) : header?.(target);
      kept.set(key, text);
    }
    return kept.get(key);
  };
}

/** Names of all built-in headers, for completion. */
export const standInNames: readonly string[] = Object.keys(HEADERS);
