import type { DataModel } from "../../reader/types/types.ts";
import type { OutsideBody, TargetMemory } from "../outcome.ts";
import { writeBytes, writeUnsigned } from "./target-text.ts";
import { numberAt, type Subject } from "./values.ts";

/** Halves away from zero: C11 7.12.9.6. */
function roundAway(x: number): number {
  const whole = Math.trunc(x);
  return Math.abs(x - whole) < 0.5 ? whole : whole + Math.sign(x);
}

/** Halves to the even neighbour, the rounding in force: C11 7.12.9.4. */
function roundEven(x: number): number {
  const low = Math.floor(x);
  const over = x - low;
  if (over !== 0.5) return over < 0.5 ? low : low + 1;
  return low % 2 === 0 ? low : low + 1;
}

const ofOne: Readonly<Record<string, (x: number) => number>> = {
  ...{ sin: Math.sin, cos: Math.cos, tan: Math.tan, asin: Math.asin, acos: Math.acos, atan: Math.atan },
  ...{ sinh: Math.sinh, cosh: Math.cosh, tanh: Math.tanh, exp: Math.exp, log: Math.log, log10: Math.log10 },
  ...{
    sqrt: Math.sqrt,
    cbrt: Math.cbrt,
    ceil: Math.ceil,
    floor: Math.floor,
    trunc: Math.trunc,
    fabs: Math.abs,
  },
  round: roundAway,
  square: (x) => x * x,
};

const ofTwo: Readonly<Record<string, (x: number, y: number) => number>> = {
  atan2: Math.atan2,
  // C11 F.10.4.4: 1 to any power is 1.
  pow: (x, y) => (x === 1 ? 1 : x ** y),
  fmod: (x, y) => x % y,
  hypot: (x, y) => Math.hypot(x, y),
  fmin: (x, y) => (Number.isNaN(x) ? y : Number.isNaN(y) ? x : Math.min(x, y)),
  fmax: (x, y) => (Number.isNaN(x) ? y : Number.isNaN(y) ? x : Math.max(x, y)),
  fdim: (x, y) => (x > y ? x - y : Number.isNaN(x) || Number.isNaN(y) ? Number.NaN : 0),
  copysign: (x, y) => (y < 0 || Object.is(y, -0) ? -Math.abs(x) : Math.abs(x)),
};

/** Each function under its name and, for `float`, that with an `f`. The caller rounds results to the type. */
function bodies(): Subject {
  const found: Record<string, OutsideBody> = {};
  for (const [name, compute] of Object.entries(ofOne)) {
    found[name] = (parameters) => compute(numberAt(parameters, 0));
    found[`${name}f`] = (parameters) => compute(numberAt(parameters, 0));
  }
  for (const [name, compute] of Object.entries(ofTwo)) {
    found[name] = (parameters) => compute(numberAt(parameters, 0), numberAt(parameters, 1));
    found[`${name}f`] = (parameters) => compute(numberAt(parameters, 0), numberAt(parameters, 1));
  }
  return found;
}

function writeDouble(memory: TargetMemory, address: number, value: number, model: DataModel): void {
  const view = new DataView(new ArrayBuffer(8));
  if (model.double === 32) view.setFloat32(0, value, true);
  else view.setFloat64(0, value, true);
  writeBytes(
    memory,
    address,
    Array.from({ length: model.double / 8 }, (_, index) => view.getUint8(index)),
  );
}

/** A value from 0.5 up to 1, and the power of two that it is multiplied with: C11 7.12.6.4. */
function split(x: number): { readonly fraction: number; readonly exponent: number } {
  if (x === 0 || !Number.isFinite(x)) return { fraction: x, exponent: 0 };
  let exponent = Math.max(-1022, Math.floor(Math.log2(Math.abs(x))) + 1);
  let fraction = x * 2 ** -exponent;
  while (Math.abs(fraction) < 0.5) {
    fraction *= 2;
    exponent -= 1;
  }
  while (Math.abs(fraction) >= 1) {
    fraction /= 2;
    exponent += 1;
  }
  return { fraction, exponent };
}

/** What avr-libc's lround and lrint give for values that no `long` holds, by its manual. */
const NO_LONG = -0x80000000;

function asLong(x: number): number {
  return Math.abs(x) < 0x80000000 ? x : NO_LONG;
}

/** Mathematics: C11 7.12, and avr-libc's square. */
export const mathFunctions: Subject = {
  ...bodies(),
  lround: (parameters) => asLong(roundAway(numberAt(parameters, 0))),
  lrint: (parameters) => asLong(roundEven(numberAt(parameters, 0))),
  ldexp: (parameters) => numberAt(parameters, 0) * 2 ** numberAt(parameters, 1),
  frexp(parameters, memory, { model }) {
    const { fraction, exponent } = split(numberAt(parameters, 0));
    const to = numberAt(parameters, 1);
    if (to !== 0) writeUnsigned(memory, to, exponent, model.int / 8);
    return fraction;
  },
  modf(parameters, memory, { model }) {
    const x = numberAt(parameters, 0);
    const whole = Math.trunc(x);
    const to = numberAt(parameters, 1);
    if (to !== 0) writeDouble(memory, to, whole, model);
    return Number.isFinite(x) ? x - whole : Number.isNaN(x) ? x : 0;
  },
  isnan: (parameters) => (Number.isNaN(numberAt(parameters, 0)) ? 1 : 0),
  isinf(parameters) {
    const x = numberAt(parameters, 0);
    return Number.isNaN(x) || Number.isFinite(x) ? 0 : Math.sign(x);
  },
  isfinite: (parameters) => (Number.isFinite(numberAt(parameters, 0)) ? 1 : 0),
};
