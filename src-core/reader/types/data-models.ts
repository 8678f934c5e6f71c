import type { DataModel } from "./types.ts";

/**
 * AVR as avr-gcc lays it out without `-mint8`: the sizes of "Type Layout" in the wiki page "avr-gcc" of the
 * GCC project. Nothing is aligned beyond a byte.
 */
export const avrModel: DataModel = {
  name: "avr",
  charSigned: true,
  short: 16,
  int: 16,
  long: 32,
  longLong: 64,
  pointer: 16,
  float: 32,
  double: 32,
  maxAlignment: 1,
};

/**
 * The 32-bit cores (ARM, RISC-V, Xtensa): `int`, `long` and pointers of 32 bits, plain `char` unsigned.
 * "Procedure Call Standard for the Arm Architecture", tables "Byte size and byte alignment of fundamental
 * data types" and "Mapping of C and C++ built-in data types".
 */
export const ilp32Model: DataModel = {
  name: "ilp32",
  charSigned: false,
  short: 16,
  int: 32,
  long: 32,
  longLong: 64,
  pointer: 32,
  float: 32,
  double: 64,
  maxAlignment: 8,
};
