import { CPU } from "avr8js";
import { expect, test } from "vitest";
import { step } from "../../../../src-core/bench/engines/avr-step.ts";

// AVR Instruction Set Manual, NEG: V is set if and only if the result is $80; S is N exclusive or V, N is bit 7.
test.each([
  { value: 0x80, result: 0x80, signed: "positive", flags: { v: 1, n: 1, s: 0 } },
  { value: 0x01, result: 0xff, signed: "negative", flags: { v: 0, n: 1, s: 1 } },
  { value: 0xff, result: 0x01, signed: "positive", flags: { v: 0, n: 0, s: 0 } },
  { value: 0x00, result: 0x00, signed: "zero", flags: { v: 0, n: 0, s: 0 } },
])("NEG of $value is $signed", ({ value, result, flags }) => {
  const neg24 = 0x9581;
  const cpu = new CPU(new Uint16Array([neg24]), 256);
  cpu.data[24] = value;
  step(cpu);
  expect(cpu.data[24]).toBe(result);
  const status = cpu.data[95] ?? 0;
  expect({ v: (status >> 3) & 1, n: (status >> 2) & 1, s: (status >> 4) & 1 }).toEqual(flags);
});
