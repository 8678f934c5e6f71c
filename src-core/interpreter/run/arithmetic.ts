import type { Missteps } from "./missteps.ts";

/** Operators whose operands can be wrong. Results are those of an AVR where the language leaves them open. */
export type Arithmetic = ReturnType<typeof arithmeticOf>;

/**
 * Operators of the generated code. Operands and results are whole numbers in the range of the type, which the names
 * tell: `i2` and `i4` signed of 16 and 32 bits, `u2` and `u4` unsigned; those of 64 bits are bigints.
 */
export function arithmeticOf(missteps: Missteps) {
  const overflow = (p: number): void => {
    missteps.note("signed-overflow", "the result does not fit its signed type", p);
  };
  const byZero = (p: number): void => {
    missteps.note("division-by-zero", "divides by zero", p);
  };
  const wrap2 = (exact: number, p: number): number => {
    const r = (exact << 16) >> 16;
    if (r !== exact) overflow(p);
    return r;
  };
  const wrap4 = (exact: number, p: number): number => {
    const r = exact | 0;
    if (r !== exact) overflow(p);
    return r;
  };
  const mul4 = (a: number, b: number, p: number): number => {
    const exact = a * b;
    if (exact > 0x7fff_ffff || exact < -0x8000_0000) overflow(p);
    return Math.imul(a, b);
  };
  const wrap8 = (exact: bigint, p: number): bigint => {
    const r = BigInt.asIntN(64, exact);
    if (r !== exact) overflow(p);
    return r;
  };

  // The division routines of avr-gcc's library subtract in a loop: by zero the quotient comes out as all ones and
  // the remainder as the dividend; signed ones divide magnitudes and then set the sign (libgcc, lib1funcs.S).
  const allOnes = { 16: 0xffff, 32: 0xffff_ffff } as const;
  const divu = (a: number, b: number, bits: 16 | 32, p: number): number => {
    if (b !== 0) return Math.floor(a / b);
    byZero(p);
    return allOnes[bits];
  };
  const divs = (a: number, b: number, bits: 16 | 32, p: number): number => {
    if (b === 0) {
      byZero(p);
      return a < 0 ? 1 : -1;
    }
    const exact = Math.trunc(a / b);
    return (bits === 16 ? wrap2(exact, p) : wrap4(exact, p)) + 0;
  };
  const mod = (a: number, b: number, p: number): number => {
    if (b !== 0) return (a % b) + 0;
    byZero(p);
    return a;
  };
  const divw = (a: bigint, b: bigint, signed: boolean, p: number): bigint => {
    if (b !== 0n) return signed ? wrap8(a / b, p) : a / b;
    byZero(p);
    return signed ? (a < 0n ? 1n : -1n) : 0xffff_ffff_ffff_ffffn;
  };
  const modw = (a: bigint, b: bigint, p: number): bigint => {
    if (b !== 0n) return a % b;
    byZero(p);
    return a;
  };

  // avr-gcc shifts in a loop that counts down a signed byte.
  const count = (n: number, bits: number, p: number): number => {
    if (n >= 0 && n < bits) return n;
    missteps.note("shift-amount", `shifts by ${n}, and the value has ${bits} bits`, p);
    const times = n & 0xff;
    return times > 128 ? 0 : times;
  };
  const shl = (a: number, n: number, bits: number, p: number): number => {
    const times = count(n, bits, p);
    return times > 31 ? 0 : a << times;
  };
  const shrs = (a: number, n: number, bits: number, p: number): number =>
    a >> Math.min(count(n, bits, p), 31);
  const shru = (a: number, n: number, bits: number, p: number): number => {
    const times = count(n, bits, p);
    return times > 31 ? 0 : a >>> times;
  };
  const shlw = (a: bigint, n: number, p: number): bigint => a << BigInt(count(n, 64, p));
  const shrw = (a: bigint, n: number, p: number): bigint => a >> BigInt(count(n, 64, p));

  /** Index into an array of known length; one past the end is an address, not an element. */
  const index = (i: number, length: number, p: number): number => {
    if (i < 0 || i >= length)
      missteps.note("out-of-bounds", `index ${i} of an array of ${length} elements`, p);
    return i;
  };
  const unset = (p: number): number => {
    missteps.note("uninitialized", "reads a variable that was never given a value", p);
    return 0;
  };
  return {
    wrap2,
    wrap4,
    mul4,
    wrap8,
    divu,
    divs,
    mod,
    divw,
    modw,
    shl,
    shrs,
    shru,
    shlw,
    shrw,
    index,
    unset,
  };
}
