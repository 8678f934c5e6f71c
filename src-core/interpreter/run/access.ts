import type { At } from "../../reader/typed/nodes.ts";
import type { Registers } from "../outcome.ts";
import type { Changes } from "./changes.ts";
import { byteState, type Memory } from "./memory.ts";
import type { Missteps } from "./missteps.ts";
import type { Pace } from "./pace.ts";

/** Loads and stores of the generated code. `p` is the number of the place in the source, addresses are unsigned. */
export type Access = ReturnType<typeof accessTo>;

/**
 * Ways to read and write memory, little-endian. Bytes that no object owns are noted and accessed all the same, as
 * the target would; those of registers go to `registers`. `changes` is told of bytes that become others.
 */
export function accessTo(
  memory: Memory,
  missteps: Missteps,
  registers: Registers | undefined,
  places: readonly (At | undefined)[],
  pace: Pick<Pace, "between" | "torn">,
  changes: Changes | undefined,
) {
  const { bytes: M, states: S, writers: W } = memory;
  const mask = memory.size - 1;
  const { none, ready, uninitialized, watched } = byteState;

  /** Notes what is wrong with an access; an address in memory's range comes back. */
  function examine(address: number, count: number, reading: boolean, p: number): number {
    const verb = reading ? "reads" : "writes";
    let worst: number = ready;
    for (let each = address; each < address + count; each += 1) {
      const state = each > mask ? none : (S[each] ?? none);
      if (state === none) worst = none;
      else if (state === uninitialized && worst !== none) worst = uninitialized;
    }
    if (worst === none && address < 0x20) missteps.note("null-pointer", `${verb} through a null pointer`, p);
    else if (worst === none)
      missteps.note("out-of-bounds", `${verb} at 0x${address.toString(16)}, where no object is`, p);
    else if (worst === uninitialized && reading)
      missteps.note("uninitialized", "reads what was never given a value", p);
    return address & mask;
  }

  function readSlow(address: number, count: number, p: number): number {
    if (S[address] === byteState.register && registers !== undefined)
      return registers.read(address, count, places[p]) >>> 0;
    if (S[address] === byteState.shared && count > 1) return readByteByByte(address, count, p);
    const at = S[address] === byteState.register ? address : examine(address, count, true, p);
    let value = 0;
    for (let each = count - 1; each >= 0; each -= 1) value = value * 256 + (M[at + each] ?? 0);
    return value;
  }

  /** Low byte first, as avr-gcc does it. */
  function readByteByByte(address: number, count: number, p: number): number {
    let value = M[address] ?? 0;
    for (let each = 1; each < count; each += 1) {
      letIn(address, count, p);
      value += (M[address + each] ?? 0) * 2 ** (8 * each);
    }
    return value;
  }

  /** An interrupt may come, and change the number of which some bytes are done. */
  function letIn(address: number, count: number, p: number): void {
    const before = M.slice(address, address + count);
    if (!pace.between(p)) return;
    // The turn of a loop in which this happens is longer than others.
    changes?.noteOther();
    if (before.some((byte, each) => byte !== M[address + each])) pace.torn(p);
  }

  /** High byte first, as avr-gcc does it. */
  function writeByteByByte(address: number, value: number, count: number, p: number): void {
    for (let each = count - 1; each >= 0; each -= 1) {
      const before = M[address + each] ?? 0;
      M[address + each] = value >>> (8 * each);
      if (before !== M[address + each]) changes?.note(address + each, before);
      W[address + each] = p;
      if (each > 0) letIn(address, count, p);
    }
  }

  function writeSlow(address: number, value: number, count: number, p: number): void {
    const place = places[p];
    if (S[address] === byteState.register && registers !== undefined && place !== undefined) {
      registers.write(address, value >>> 0, count, place);
      return;
    }
    if (S[address] === byteState.shared && count > 1) {
      writeByteByByte(address, value, count, p);
      return;
    }
    const at = S[address] === byteState.register ? address : owned(address, count, p);
    for (let each = 0; each < count; each += 1) {
      const before = M[at + each] ?? 0;
      M[at + each] = value >>> (8 * each);
      if (before !== M[at + each]) changes?.note(at + each, before);
      W[at + each] = p;
      if (S[at + each] === uninitialized) S[at + each] = ready;
      else if (S[at + each] === watched) list(at + each, p);
    }
  }

  function list(address: number, place: number): void {
    memory.written.push({ address, value: M[address] ?? 0, place });
  }

  function owned(address: number, count: number, p: number): number {
    for (let each = address; each < address + count; each += 1) {
      if (each > mask || S[each] === none) return examine(address, count, false, p);
    }
    return address;
  }

  const view = new DataView(M.buffer);
  const isReady = (a: number, count: number): boolean => {
    for (let each = a; each < a + count; each += 1) if (S[each] !== ready) return false;
    return true;
  };
  const l1 = (a: number, p: number): number => (S[a] === ready ? (M[a] ?? 0) : readSlow(a, 1, p));
  const l2 = (a: number, p: number): number =>
    S[a] === ready && S[a + 1] === ready ? (M[a] ?? 0) | ((M[a + 1] ?? 0) << 8) : readSlow(a, 2, p);
  const l4 = (a: number, p: number): number => (isReady(a, 4) ? view.getUint32(a, true) : readSlow(a, 4, p));
  const l8 = (a: number, p: number): bigint =>
    isReady(a, 8)
      ? view.getBigUint64(a, true)
      : (BigInt(readSlow(a + 4, 4, p)) << 32n) | BigInt(readSlow(a, 4, p));
  const s1 = (a: number, v: number, p: number): number => {
    if (S[a] === ready) {
      if (changes !== undefined && M[a] !== (v & 0xff)) changes.note(a, M[a] ?? 0);
      M[a] = v;
      W[a] = p;
    } else writeSlow(a, v & 0xff, 1, p);
    return v;
  };
  const s2 = (a: number, v: number, p: number): number => {
    if (S[a] === ready && S[a + 1] === ready) {
      if (changes !== undefined) {
        if (M[a] !== (v & 0xff)) changes.note(a, M[a] ?? 0);
        if (M[a + 1] !== ((v >> 8) & 0xff)) changes.note(a + 1, M[a + 1] ?? 0);
      }
      M[a] = v;
      M[a + 1] = v >> 8;
      W[a] = p;
      W[a + 1] = p;
    } else writeSlow(a, v & 0xffff, 2, p);
    return v;
  };
  const s4 = (a: number, v: number, p: number): number => {
    writeSlow(a, v, 4, p);
    return v;
  };
  const s8 = (a: number, v: bigint, p: number): bigint => {
    writeSlow(a, Number(BigInt.asUintN(32, v)), 4, p);
    writeSlow(a + 4, Number(BigInt.asUintN(32, v >> 32n)), 4, p);
    return v;
  };
  const scratch = new DataView(new ArrayBuffer(8));
  const lf = (a: number, p: number): number => {
    scratch.setUint32(0, l4(a, p));
    return scratch.getFloat32(0);
  };
  const sf = (a: number, v: number, p: number): number => {
    scratch.setFloat32(0, v);
    s4(a, scratch.getUint32(0), p);
    return v;
  };
  const ld = (a: number, p: number): number => {
    scratch.setBigUint64(0, l8(a, p));
    return scratch.getFloat64(0);
  };
  const sd = (a: number, v: number, p: number): number => {
    scratch.setFloat64(0, v);
    s8(a, scratch.getBigUint64(0), p);
    return v;
  };

  /** Puts `bits` where the bits of `own` are, into a byte that holds a piece of a bit-field. */
  const put = (a: number, own: number, bits: number, p: number): void => {
    const before = own === 0xff ? 0 : S[a] === uninitialized ? (M[a] ?? 0) : l1(a, p);
    s1(a, (before & ~own) | bits, p);
  };
  /** A bit-field: `bit` counts from the least significant bit of the byte at `a`; `bit + width` is at most 32. */
  const lb = (a: number, bit: number, width: number, signed: boolean, p: number): number => {
    let whole = 0;
    for (let each = (bit + width - 1) >> 3; each >= 0; each -= 1) whole = (whole << 8) | l1(a + each, p);
    const above = 32 - width;
    const atTop = whole << (above - bit);
    return signed ? atTop >> above : atTop >>> above;
  };
  const sb = (a: number, bit: number, width: number, v: number, p: number): void => {
    const own = (-1 >>> (32 - width)) << bit;
    const placed = (v << bit) & own;
    for (let each = 0; each <= (bit + width - 1) >> 3; each += 1)
      put(a + each, (own >>> (8 * each)) & 0xff, (placed >>> (8 * each)) & 0xff, p);
  };
  /** The same for bit-fields of any width, as bigints. */
  const lw = (a: number, bit: number, width: number, signed: boolean, p: number): bigint => {
    let whole = 0n;
    for (let each = (bit + width - 1) >> 3; each >= 0; each -= 1)
      whole = (whole << 8n) | BigInt(l1(a + each, p));
    const value = whole >> BigInt(bit);
    return signed ? BigInt.asIntN(width, value) : BigInt.asUintN(width, value);
  };
  const sw = (a: number, bit: number, width: number, v: bigint, p: number): void => {
    const own = ((1n << BigInt(width)) - 1n) << BigInt(bit);
    const placed = BigInt.asUintN(width, v) << BigInt(bit);
    for (let each = 0; each <= (bit + width - 1) >> 3; each += 1) {
      const shift = BigInt(8 * each);
      put(a + each, Number((own >> shift) & 0xffn), Number((placed >> shift) & 0xffn), p);
    }
  };

  /** Copies an object with what is known of its bytes; registers are none. */
  const copy = (to: number, from: number, count: number, p: number): number => {
    if (to === from) return to;
    owned(to, count, p);
    for (let each = from; each < from + count; each += 1) {
      if (each > mask || S[each] === none) {
        examine(from, count, true, p);
        break;
      }
    }
    if (changes !== undefined) noteCopy(changes, to, from, count);
    M.copyWithin(to, from, from + count);
    const isUnset = S.subarray(from, from + count).includes(uninitialized);
    for (let each = 0; each < count; each += 1) {
      if (S[to + each] === none) continue;
      W[to + each] = p;
      if (S[to + each] === watched) {
        list(to + each, p);
        continue;
      }
      if (S[to + each] === byteState.shared) continue;
      S[to + each] = isUnset && S[from + each] === uninitialized ? uninitialized : ready;
    }
    return to;
  };
  function noteCopy(noted: Changes, to: number, from: number, count: number): void {
    for (let each = 0; each < count; each += 1) {
      if (M[to + each] !== M[from + each]) noted.note(to + each, M[to + each] ?? 0);
    }
  }
  const zero = (a: number, count: number, p: number): number => {
    for (let each = 0; each < count; each += 1) s1(a + each, 0, p);
    return a;
  };
  /** A local object whose declaration is run again holds nothing. */
  const fresh = (a: number, count: number): void => {
    S.fill(uninitialized, a, a + count);
  };
  return { l1, l2, l4, l8, s1, s2, s4, s8, lf, sf, ld, sd, lb, sb, lw, sw, copy, zero, fresh };
}
