import type { Chip } from "../../model/chips/chip.ts";
import type { Language } from "../lexer/scanner.ts";

/**
 * Macros that the compiler defines before the first line, as `avr-gcc -dM -E` 5.4 prints them for the chip
 * (`arm-none-eabi-gcc` for chips with 32-bit int). Those about fixed-point and floating-point formats, atomics
 * and the compiler's own built-ins are left out.
 */
export function predefinedMacros(
  chip: Chip | undefined,
  language: Language,
  clockHz: number | undefined,
): Readonly<Record<string, string>> {
  const isWide = chip?.dataModel === "ilp32";
  return {
    ...COMMON,
    ...(language === "c++" ? CPP : C),
    ...(isWide ? WIDE : AVR_TYPES),
    ...(chip === undefined || chip.family === "avr" || chip.family === "avr-dx" ? avrMacros(chip) : {}),
    ...(clockHz === undefined ? {} : { F_CPU: `${clockHz}UL` }),
  };
}

const COMMON: Readonly<Record<string, string>> = {
  __GNUC__: "5",
  __GNUC_MINOR__: "4",
  __GNUC_PATCHLEVEL__: "0",
  __VERSION__: '"5.4.0"',
  __STDC__: "1",
  __STDC_HOSTED__: "1",
  __CHAR_BIT__: "8",
  __OPTIMIZE__: "1",
  __ORDER_LITTLE_ENDIAN__: "1234",
  __ORDER_BIG_ENDIAN__: "4321",
  __BYTE_ORDER__: "__ORDER_LITTLE_ENDIAN__",
  __SCHAR_MAX__: "0x7f",
  __SHRT_MAX__: "0x7fff",
  __LONG_MAX__: "0x7fffffffL",
  __LONG_LONG_MAX__: "0x7fffffffffffffffLL",
  __INT8_MAX__: "0x7f",
  __INT16_MAX__: "0x7fff",
  __INT32_MAX__: "0x7fffffffL",
  __INT64_MAX__: "0x7fffffffffffffffLL",
  __UINT8_MAX__: "0xff",
  __UINT32_MAX__: "0xffffffffUL",
  __UINT64_MAX__: "0xffffffffffffffffULL",
  __INT8_TYPE__: "signed char",
  __UINT8_TYPE__: "unsigned char",
  __INT32_TYPE__: "long int",
  __UINT32_TYPE__: "long unsigned int",
  __INT64_TYPE__: "long long int",
  __UINT64_TYPE__: "long long unsigned int",
  __INTMAX_TYPE__: "long long int",
  __UINTMAX_TYPE__: "long long unsigned int",
  __SIZE_TYPE__: "unsigned int",
  __PTRDIFF_TYPE__: "int",
  __SIZEOF_SHORT__: "2",
  __SIZEOF_LONG__: "4",
  __SIZEOF_LONG_LONG__: "8",
  __SIZEOF_FLOAT__: "4",
};

const C: Readonly<Record<string, string>> = { __STDC_VERSION__: "201112L", __GNUC_STDC_INLINE__: "1" };

/** `-std=gnu++11`, which the sketch tools ask for. */
const CPP: Readonly<Record<string, string>> = { __cplusplus: "201103L", __GNUG__: "5", __DEPRECATED: "1" };

const AVR_TYPES: Readonly<Record<string, string>> = {
  __INT_MAX__: "0x7fff",
  __WCHAR_MAX__: "0x7fff",
  __SIZE_MAX__: "0xffffU",
  __UINT16_MAX__: "0xffffU",
  __INT16_TYPE__: "int",
  __UINT16_TYPE__: "unsigned int",
  __WCHAR_TYPE__: "int",
  __SIZEOF_INT__: "2",
  __SIZEOF_POINTER__: "2",
  __SIZEOF_SIZE_T__: "2",
  __SIZEOF_PTRDIFF_T__: "2",
  __SIZEOF_WCHAR_T__: "2",
  __SIZEOF_DOUBLE__: "4",
  __SIZEOF_LONG_DOUBLE__: "4",
};

const WIDE: Readonly<Record<string, string>> = {
  __INT_MAX__: "0x7fffffff",
  __WCHAR_MAX__: "0xffffffffU",
  __SIZE_MAX__: "0xffffffffU",
  __UINT16_MAX__: "0xffff",
  __INT16_TYPE__: "short int",
  __UINT16_TYPE__: "short unsigned int",
  __WCHAR_TYPE__: "unsigned int",
  __SIZEOF_INT__: "4",
  __SIZEOF_POINTER__: "4",
  __SIZEOF_SIZE_T__: "4",
  __SIZEOF_PTRDIFF_T__: "4",
  __SIZEOF_WCHAR_T__: "4",
  __SIZEOF_DOUBLE__: "8",
  __SIZEOF_LONG_DOUBLE__: "8",
  __CHAR_UNSIGNED__: "1",
};

function avrMacros(chip: Chip | undefined): Readonly<Record<string, string>> {
  const common = { AVR: "1", __AVR: "1", __AVR__: "1", __WITH_AVRLIBC__: "1", __AVR_SFR_OFFSET__: "0x20" };
  if (chip === undefined) return common;
  const device = { [`__AVR_${chip.printedName}__`]: "1", __AVR_DEVICE_NAME__: chip.name };
  return {
    ...common,
    ...device,
    ...(chip.kind === "avr" ? coreMacros(chip.memory.flashEnd, chip.name) : {}),
  };
}

/** What the compiler says of the core: tiny parts have no multiplier, and jumps grow with the flash. */
function coreMacros(flashEnd: number, name: string): Readonly<Record<string, string>> {
  const shared = { __AVR_HAVE_LPMX__: "1", __AVR_HAVE_MOVW__: "1" };
  if (name.startsWith("attiny")) return { ...shared, __AVR_ARCH__: "25", __AVR_2_BYTE_PC__: "1" };
  const enhanced = {
    ...shared,
    __AVR_ENHANCED__: "1",
    __AVR_HAVE_MUL__: "1",
    __AVR_HAVE_16BIT_SP__: "1",
  };
  if (flashEnd <= 0x1fff) return { ...enhanced, __AVR_ARCH__: "4", __AVR_2_BYTE_PC__: "1" };
  const mega = { ...enhanced, __AVR_MEGA__: "1", __AVR_HAVE_JMP_CALL__: "1" };
  if (flashEnd > 0x1ffff)
    return { ...mega, __AVR_ARCH__: "6", __AVR_3_BYTE_PC__: "1", __AVR_HAVE_RAMPZ__: "1" };
  if (flashEnd > 0xffff)
    return { ...mega, __AVR_ARCH__: "51", __AVR_2_BYTE_PC__: "1", __AVR_HAVE_RAMPZ__: "1" };
  return { ...mega, __AVR_ARCH__: "5", __AVR_2_BYTE_PC__: "1" };
}

/** Macros that the sketch tools add on their command line. The version is that of the core's last 1.8 release. */
export function sketchMacros(chip: Chip | undefined): Readonly<Record<string, string>> {
  const isAvr = chip === undefined || chip.family === "avr";
  return { ARDUINO: "10819", ...(isAvr ? { ARDUINO_ARCH_AVR: "1" } : {}) };
}
