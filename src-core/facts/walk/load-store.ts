import type { At, TypedExpression, TypedInitializer, Variable } from "../../reader/typed/nodes.ts";
import { integerTypeOf } from "../../reader/types/conversions.ts";
import type { Type } from "../../reader/types/types.ts";
import type { RegisterWrite } from "./events.ts";
import { evaluate } from "./expressions.ts";
import type { Machine } from "./machine.ts";
import type { Place, RegisterRoot } from "./places.ts";
import { bitsOf, integer, sameValue, unknown, unknownBits, unknownOf } from "./unknowns.ts";
import type { CopiedBits, Register, Value } from "./values.ts";

const everyBit = 0xffffffff;

/** What a place holds. Reading a register is an event. */
export function load(machine: Machine, place: Place, at: At): Value {
  if (place.root.kind !== "register") return heldValue(machine, place);
  machine.emitRead({
    kind: "register-read",
    at,
    register: place.root.register,
    mask: everyBit,
  });
  return registerValue(machine, place, place.root);
}

/** The same without an event, as when states are joined. */
export function heldValue(machine: Machine, place: Place): Value {
  if (place.root.kind === "register") return registerValue(machine, place, place.root);
  if (place.shared !== undefined) return unknownOf(place.type ?? anything, undefined, [place.shared]);
  const isState = place.depth > 0 || mayChange(machine, place);
  if (isState) machine.memory.touch(place);
  if (place.value !== undefined) return place.value;
  for (let outer = place.of; outer !== undefined; outer = outer.of) {
    if (isState) machine.memory.touch(outer);
    if (outer.value === undefined) continue;
    // Zero on a whole object means that what was not given a value is zero.
    return outer.value.kind === "integer" ? outer.value : unknownOf(place.type ?? anything, undefined);
  }
  return firstValue(machine, place);
}

const anything: Type = { kind: "unknown", name: "" };

function registerValue(machine: Machine, place: Place, root: RegisterRoot): Value {
  const { register, latch } = root;
  if (latch) machine.memory.touch(place);
  const above = register.bits === 32 ? 0 : (-1 << register.bits) >>> 0;
  const held = latch ? bitsOf(place.value ?? firstLatch(machine, place)) : { known: 0, ones: 0 };
  const known = (held.known | above) >>> 0;
  if (known === everyBit) return integer(held.ones >>> 0, undefined);
  const whole = (everyBit & ~above) >>> 0;
  return unknownBits(known, held.ones, undefined, [{ kind: "register", register, mask: whole }], {
    register,
    same: whole,
    flipped: 0,
    shift: 0,
  });
}

/** Ports are all 0 after reset; later they hold what the program wrote, where that was always the same. */
function firstLatch(machine: Machine, place: Place): Value {
  if (machine.moment === "reset") return integer(0, undefined);
  const { settled } = place;
  return settled === undefined || settled === "several" ? unknown(undefined) : settled;
}

/** What a place holds that was not written on this path. */
function firstValue(machine: Machine, place: Place): Value {
  const { root } = place;
  const type = place.type ?? anything;
  if (root.kind === "temporary") return stringElement(place) ?? unknownOf(type, undefined);
  if (root.kind !== "variable") return unknownOf(type, undefined);
  const { storage } = root;
  if (storage === "local" || storage === "parameter" || storage === "field")
    return unknownOf(type, undefined);
  if (machine.moment === "any" && isWritten(machine, place, root)) {
    const { settled } = place;
    return settled === undefined || settled === "several" ? unknownOf(type, undefined) : settled;
  }
  if (isOnlyDeclared(root)) return unknownOf(type, undefined);
  return initialValue(machine, place, root);
}

function mayChange(machine: Machine, place: Place): boolean {
  const { root } = place;
  if (root.kind !== "variable") return root.kind === "temporary" && root.literal === undefined;
  return isWritten(machine, place, root);
}

function isWritten(machine: Machine, place: Place, root: Variable): boolean {
  if (machine.everWritten.variable(root) !== undefined) return true;
  for (let at: Place | undefined = place; at !== undefined; at = at.of) {
    if (typeof at.key === "object" && machine.everWritten.field(at.key) !== undefined) return true;
  }
  return false;
}

/** `extern` with no definition in the project. */
function isOnlyDeclared(variable: Variable): boolean {
  return variable.initializer === undefined && variable.declarationAt.first.text === "extern";
}

/** The value that a variable with static storage starts with. */
function initialValue(machine: Machine, place: Place, root: Variable): Value {
  const path: Place["key"][] = [];
  for (let at: Place = place; at.of !== undefined; at = at.of) path.unshift(at.key);
  let initializer: TypedInitializer | undefined = root.initializer;
  if (initializer?.kind === "constructor") return unknownOf(place.type ?? anything, undefined);
  for (const key of path) {
    if (initializer?.kind === "value") return literalElement(initializer.value, key) ?? integer(0, undefined);
    if (initializer?.kind !== "aggregate") break;
    initializer = entryOf(initializer, key);
  }
  if (initializer === undefined) return zeroOf(place.type ?? anything);
  if (initializer.kind !== "value") return unknownOf(place.type ?? anything, undefined);
  const value = initializer.value;
  return machine.quietly(() => evaluate(machine, value));
}

function entryOf(
  aggregate: Extract<TypedInitializer, { kind: "aggregate" }>,
  key: Place["key"],
): TypedInitializer | undefined {
  for (const { target, initializer } of aggregate.entries) {
    if (target === key) return initializer;
    if (typeof key === "number" && "index" in target && key >= target.index && key <= target.upTo)
      return initializer;
  }
  return undefined;
}

function zeroOf(type: Type): Value {
  if (type.kind === "floating") return { kind: "floating", value: 0, from: undefined };
  if (integerTypeOf(type) !== undefined || type.kind === "pointer") return integer(0, undefined);
  return unknownOf(type, undefined);
}

function stringElement(place: Place): Value | undefined {
  const literal = place.root.kind === "temporary" ? place.root.literal : undefined;
  return literal && literalElement(literal, place.key);
}

function literalElement(value: TypedExpression, key: Place["key"]): Value | undefined {
  if (value.kind !== "string" || typeof key !== "number") return undefined;
  const byte = value.bytes[key];
  return byte === undefined ? undefined : integer(byte, value);
}

/** Writes `value`; a register write is an event and may be more to the hardware. */
export function store(
  machine: Machine,
  place: Place,
  value: Value,
  at: At,
  operator: RegisterWrite["operator"] = "=",
  operand: Value = value,
): void {
  const { root } = place;
  if (root.kind === "register") {
    storeRegister(machine, place, root, value, at, operator, operand);
    return;
  }
  machine.memory.write(place, value);
  if (machine.moment === "reset") settle(place, value);
}

/** Remembers what the program writes, for the moments when something else starts. */
export function settle(place: Place, value: Value): void {
  const { settled } = place;
  if (settled === undefined) place.settled = value;
  else if (settled !== "several" && !sameValue(settled, value)) place.settled = "several";
}

function storeRegister(
  machine: Machine,
  place: Place,
  root: RegisterRoot,
  value: Value,
  at: At,
  operator: RegisterWrite["operator"],
  operand: Value,
): void {
  const { register } = root;
  const whole = register.bits === 32 ? everyBit : 2 ** register.bits - 1;
  const bits = bitsOf(value);
  const before = bitsOf(registerValue(machine, place, root));
  const copied = value.kind === "unknown" && isUnshifted(value.copied, register) ? value.copied : undefined;
  const after = { known: (bits.known & whole) >>> 0, ones: (bits.ones & whole) >>> 0 };
  const explicit =
    operator === "|=" || operator === "&=" || operator === "^="
      ? maskForm(operator, operand, whole)
      : undefined;
  const write: RegisterWrite = {
    kind: "register-write",
    at,
    register,
    value: operand,
    operator,
    ones: explicit?.ones ?? after.ones,
    zeros: explicit?.zeros ?? (after.known & ~after.ones & whole) >>> 0,
    flipped: explicit?.flipped ?? ((copied?.flipped ?? 0) & whole) >>> 0,
    kept: explicit?.kept ?? ((copied?.same ?? 0) & whole) >>> 0,
    before: { known: before.known & whole, ones: before.ones & whole },
    after,
  };
  machine.memory.write(place, value);
  if (machine.moment === "reset" && root.latch) settleBits(place, value);
  machine.emit(write);
  machine.hardware.written(write, machine);
}

function isUnshifted(copied: CopiedBits | undefined, register: Register): boolean {
  return copied !== undefined && copied.register.name === register.name && copied.shift === 0;
}

/** Bits of a port that are always written alike stay known; the rest does not. */
export function settleBits(place: Place, value: Value): void {
  const { settled } = place;
  if (settled === "several") return;
  const now = bitsOf(value);
  if (settled === undefined) {
    place.settled = value;
    return;
  }
  const held = bitsOf(settled);
  const known = held.known & now.known & ~(held.ones ^ now.ones);
  place.settled = unknownBits(known, held.ones & known, undefined, [], undefined);
}

/** What `|=`, `&=` and `^=` do to the bits, whatever stood there. */
function maskForm(
  operator: "|=" | "&=" | "^=",
  operand: Value,
  whole: number,
): Pick<RegisterWrite, "ones" | "zeros" | "flipped" | "kept"> {
  const { known, ones } = bitsOf(operand);
  const set = (known & ones & whole) >>> 0;
  const clear = (known & ~ones & whole) >>> 0;
  if (operator === "|=") return { ones: set, zeros: 0, flipped: 0, kept: clear };
  if (operator === "&=") return { ones: 0, zeros: clear, flipped: 0, kept: set };
  return { ones: 0, zeros: 0, flipped: set, kept: clear };
}
