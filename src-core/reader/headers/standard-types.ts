import { define, type HeaderTarget, type HeaderText } from "./header-target.ts";

/**
 * Headers of the C library that say how wide the types are: C11 5.2.4.2.1, 7.18 to 7.20. Widths as
 * `avr-gcc -dM -E` and `arm-none-eabi-gcc -dM -E` predefine them.
 */

interface Width {
  readonly bits: number;
  readonly type: string;
  /** Suffix that gives a constant the type. */
  readonly suffix: string;
}

function widths({ intBits }: HeaderTarget): readonly Width[] {
  return [
    { bits: 8, type: "char", suffix: "" },
    { bits: 16, type: intBits === 16 ? "int" : "short", suffix: "" },
    { bits: 32, type: "long", suffix: "L" },
    { bits: 64, type: "long long", suffix: "LL" },
  ];
}

function greatest(bits: number): string {
  return String((1n << BigInt(bits)) - 1n);
}

export const stdint: HeaderText = (target) => {
  let text = "#pragma once\n";
  for (const { bits, type, suffix } of widths(target)) {
    const signed = type === "char" ? "signed char" : type;
    const isUnsigned = bits < 16 || (bits === 16 && target.intBits === 32) ? "" : "U";
    for (const kind of ["", "_least", "_fast"]) {
      const isWide = kind === "_fast" && bits < 32 && target.intBits === 32;
      text += `typedef ${isWide ? "int" : signed} int${kind}${bits}_t;\n`;
      text += `typedef unsigned ${isWide ? "int" : type} uint${kind}${bits}_t;\n`;
      const upper = kind.toUpperCase();
      const size = isWide ? 32 : bits;
      text += define(`INT${upper}${bits}_MAX`, `${greatest(size - 1)}${suffix}`);
      text += define(`INT${upper}${bits}_MIN`, `(-INT${upper}${bits}_MAX - 1)`);
      text += define(`UINT${upper}${bits}_MAX`, `${greatest(size)}${isWide ? "U" : isUnsigned}${suffix}`);
    }
    text += define(`INT${bits}_C(c)`, suffix === "" ? "c" : `c ## ${suffix}`);
    text += define(`UINT${bits}_C(c)`, `${isUnsigned}${suffix}` === "" ? "c" : `c ## ${isUnsigned}${suffix}`);
  }
  const pointer = target.intBits;
  return `${text}typedef int intptr_t;
typedef unsigned int uintptr_t;
typedef long long intmax_t;
typedef unsigned long long uintmax_t;
#define INTMAX_C(c) c ## LL
#define UINTMAX_C(c) c ## ULL
#define INTMAX_MAX INT64_MAX
#define INTMAX_MIN INT64_MIN
#define UINTMAX_MAX UINT64_MAX
#define INTPTR_MAX ${greatest(pointer - 1)}
#define INTPTR_MIN (-INTPTR_MAX - 1)
#define UINTPTR_MAX ${greatest(pointer)}U
#define PTRDIFF_MAX ${greatest(pointer - 1)}
#define PTRDIFF_MIN (-PTRDIFF_MAX - 1)
#define SIZE_MAX ${greatest(pointer)}U
`;
};

export const limits: HeaderText = ({ intBits }) => `#pragma once
#define CHAR_BIT 8
#define SCHAR_MAX 127
#define SCHAR_MIN (-SCHAR_MAX - 1)
#define UCHAR_MAX 255
#ifdef __CHAR_UNSIGNED__
#define CHAR_MAX UCHAR_MAX
#define CHAR_MIN 0
#else
#define CHAR_MAX SCHAR_MAX
#define CHAR_MIN SCHAR_MIN
#endif
#define SHRT_MAX 32767
#define SHRT_MIN (-SHRT_MAX - 1)
#define USHRT_MAX ${intBits === 16 ? "65535U" : "65535"}
#define INT_MAX ${greatest(intBits - 1)}
#define INT_MIN (-INT_MAX - 1)
#define UINT_MAX ${greatest(intBits)}U
#define LONG_MAX ${greatest(31)}L
#define LONG_MIN (-LONG_MAX - 1L)
#define ULONG_MAX ${greatest(32)}UL
#define LLONG_MAX ${greatest(63)}LL
#define LLONG_MIN (-LLONG_MAX - 1LL)
#define ULLONG_MAX ${greatest(64)}ULL
`;

export const stddef: HeaderText = ({ language }) => `#pragma once
typedef unsigned int size_t;
typedef int ptrdiff_t;
${language === "c" ? "typedef int wchar_t;\n#define NULL ((void *)0)" : "#define NULL 0"}
#define offsetof(type, member) __builtin_offsetof(type, member)
`;

export const stdbool: HeaderText = ({ language }) =>
  language === "c++"
    ? "#pragma once\n#define __bool_true_false_are_defined 1\n"
    : `#pragma once
#define bool _Bool
#define true 1
#define false 0
#define __bool_true_false_are_defined 1
`;

/** The macros of C11 7.8.1 for the widths that firmware prints. */
export const inttypes: HeaderText = (target) => {
  let text = "#pragma once\n#include <stdint.h>\n";
  for (const { bits, type } of widths(target)) {
    if (bits === 64) continue;
    const length = type === "long" ? "l" : "";
    for (const letter of ["d", "i", "u", "o", "x", "X"]) {
      text += define(`PRI${letter}${bits}`, `"${length}${letter}"`);
    }
  }
  return text;
};

export const float: HeaderText = ({ intBits }) => {
  const wide = intBits === 32;
  return `#pragma once
#define FLT_RADIX 2
#define FLT_DIG 6
#define FLT_EPSILON 1.19209290e-7F
#define FLT_MAX 3.40282347e+38F
#define FLT_MIN 1.17549435e-38F
#define DBL_DIG ${wide ? 15 : 6}
#define DBL_EPSILON ${wide ? "2.2204460492503131e-16" : "1.19209290e-7"}
#define DBL_MAX ${wide ? "1.7976931348623157e+308" : "3.40282347e+38"}
#define DBL_MIN ${wide ? "2.2250738585072014e-308" : "1.17549435e-38"}
`;
};
