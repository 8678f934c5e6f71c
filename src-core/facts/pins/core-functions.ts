import type { Chip } from "../../model/chips/chip.ts";
import type { Type } from "../../reader/types/types.ts";
import { copyObject } from "../walk/assignments.ts";
import type { OutsideCall } from "../walk/events.ts";
import { heldValue } from "../walk/load-store.ts";
import { neighbour } from "../walk/lvalues.ts";
import type { Machine } from "../walk/machine.ts";
import { integer, truthOf, unknown, unknownBits } from "../walk/unknowns.ts";
import { integerOf, type Trace, type Value } from "../walk/values.ts";
import type { ChipRegisters } from "./chip-registers.ts";
import { bitPlaces, pinState, setBit } from "./pin-bits.ts";
import type { PinName, Tristate } from "./pin-change.ts";
import { pinOfNumber } from "./pin-names.ts";

/** What the functions of the sketch core and of the chip's library stand on. */
export interface Board {
  readonly chip: Chip | undefined;
  readonly registers: ChipRegisters;
}

/** Modes of `pinMode` (common practice of sketch cores: INPUT 0, OUTPUT 1, INPUT_PULLUP 2). */
const outputMode = 1;
const pullUpMode = 2;

type CoreFunction = (call: OutsideCall, machine: Machine, board: Board) => Value | undefined;

const coreFunctions: ReadonlyMap<string, CoreFunction> = new Map<string, CoreFunction>([
  ["pinMode", pinMode],
  ["digitalWrite", digitalWrite],
  ["digitalRead", (call) => looked(call.arguments[0])],
  ["millis", (call) => elapsed(call, "ms")],
  ["micros", (call) => elapsed(call, "us")],
  ["digitalPinToInterrupt", interruptOf],
  ["pgm_read_byte_far", readPointer],
  ["pgm_read_word_far", readPointer],
  ["pgm_read_dword_far", readPointer],
  ["memcpy", copyMemory],
  ["memcpy_P", copyMemory],
  // The stand-in of ATOMIC_BLOCK is a loop that runs once.
  ["__interrupts_off", () => integer(1, undefined)],
  ["__interrupts_on", () => integer(1, undefined)],
]);

/** What a function of the core gives, having done what it does to pins; undefined where it is not known here. */
export function callCore(call: OutsideCall, machine: Machine, board: Board): Value | undefined {
  return coreFunctions.get(call.name)?.(call, machine, board);
}

function pinArgument(call: OutsideCall, board: Board): PinName | undefined {
  const number = integerOf(call.arguments[0]);
  return number === undefined ? undefined : pinOfNumber(board.chip, number);
}

function pinMode(call: OutsideCall, machine: Machine, board: Board): Value | undefined {
  const pin = pinArgument(call, board);
  const value = call.arguments[1];
  if (pin === undefined) return undefined;
  const mode = integerOf(value);
  const places = bitPlaces(machine, board.registers, pin);
  const before = pinState(machine, places);
  const direction: Tristate = mode === undefined ? undefined : mode === outputMode ? 1 : 0;
  setBit(machine, places.direction, places.directionBit, direction);
  // An input mode sets the pull-up as well; OUTPUT leaves the latch as it is.
  if (mode !== outputMode) {
    const latch: Tristate = mode === undefined ? undefined : mode === pullUpMode ? 1 : 0;
    setBit(machine, places.latch, places.latchBit, latch);
  }
  emitChange(call, machine, pin, before, pinState(machine, places), value);
  return unknown(undefined);
}

function digitalWrite(call: OutsideCall, machine: Machine, board: Board): Value | undefined {
  const pin = pinArgument(call, board);
  const value = call.arguments[1];
  if (pin === undefined || value === undefined) return undefined;
  const places = bitPlaces(machine, board.registers, pin);
  const before = pinState(machine, places);
  const truth = truthOf(value);
  setBit(machine, places.latch, places.latchBit, truth === undefined ? undefined : truth ? 1 : 0);
  emitChange(call, machine, pin, before, pinState(machine, places), value);
  return unknown(undefined);
}

function emitChange(
  call: OutsideCall,
  machine: Machine,
  pin: PinName,
  before: ReturnType<typeof pinState>,
  after: ReturnType<typeof pinState>,
  value: Value | undefined,
): void {
  machine.emit({ kind: "pin", at: call.at, change: { pin, before, after, value } });
}

function looked(pin: Value | undefined): Value | undefined {
  if (pin === undefined) return undefined;
  return unknownBits(0xfffffffe, 0, undefined, [{ kind: "pin", pin }], undefined);
}

function elapsed(call: OutsideCall, unit: "ms" | "us"): Value {
  return unknown(undefined, [{ kind: "time", unit, name: call.name }]);
}

function interruptOf(call: OutsideCall, _machine: Machine, board: Board): Value | undefined {
  const [pin] = call.arguments;
  if (pin === undefined) return undefined;
  const name = pinArgument(call, board);
  const number = board.chip?.kind === "avr" ? board.chip.sketchInterrupts.indexOf(name ?? "") : -1;
  if (number >= 0) return integer(number, pin.from);
  const trace: Trace = { kind: "interrupt-of", pin };
  return unknown(pin.from, [trace]);
}

function readPointer(call: OutsideCall, machine: Machine): Value | undefined {
  const [pointer] = call.arguments;
  return pointer?.kind === "address" ? heldValue(machine, pointer.place) : undefined;
}

/** Bytes of arrays that are copied one by one. */
const mostBytes = 64;

/** `memcpy_P(&step, entry, sizeof step)`: one object to another of its type, or bytes of one array to another. */
function copyMemory(call: OutsideCall, machine: Machine): Value | undefined {
  const [to, from, count] = call.arguments;
  if (to?.kind !== "address" || from?.kind !== "address") return undefined;
  const { type } = to.place;
  if (type?.kind === "record" && from.place.type?.kind === "record") {
    if (type.record !== from.place.type.record) return undefined;
    copyObject(machine, from, to.place);
    return to;
  }
  const bytes = integerOf(count);
  if (bytes === undefined || bytes > mostBytes || !isByte(type) || !isByte(from.place.type)) return undefined;
  for (let at = 0; at < bytes; at += 1) {
    const source = neighbour(machine, from.place, at);
    const target = neighbour(machine, to.place, at);
    if (source === undefined || target === undefined) return undefined;
    machine.memory.write(target, heldValue(machine, source));
  }
  return to;
}

function isByte(type: Type | undefined): boolean {
  return type?.kind === "integer" && type.bits === 8;
}
