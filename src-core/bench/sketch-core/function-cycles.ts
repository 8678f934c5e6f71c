import { coreFunctionCycles, coreHandlerCycles } from "../engines/core-function-cycles.ts";

/**
 * Cycles of a function or handler of the sketch core, on both sides of the moment at which it reads or writes what it is
 * called for.
 */
export interface FunctionCycles {
  readonly before: number;
  readonly after: number;
}

/** `before` counted from the call, or from the response to the interrupt; the whole is that of the measured table. */
function split(whole: number | undefined, before: number): FunctionCycles {
  if (whole === undefined || whole < before)
    throw new Error(`no cycles of which ${before} are the first part`);
  return { before, after: whole - before };
}

const {
  pinMode,
  digitalWrite,
  digitalRead,
  millis,
  micros,
  delayMicroseconds,
  shiftOut,
  shiftIn,
  attachInterrupt,
  detachInterrupt,
  "HardwareSerial::begin": begin,
  "HardwareSerial::write": write,
  "HardwareSerial::available": available,
  "HardwareSerial::availableForWrite": availableForWrite,
  "HardwareSerial::read": read,
  "HardwareSerial::peek": peek,
  "HardwareSerial::flush": flush,
} = coreFunctionCycles;

/** First parts: measured with link-time optimisation at the registers that are written, on the bench's own chip. */
export const functionCycles = {
  pinMode: split(pinMode?.cycles, 55),
  digitalWrite: split(digitalWrite?.cycles, 58),
  digitalWriteTimerPin: split(digitalWrite?.onTimerPin, 75),
  digitalRead: split(digitalRead?.cycles, 46),
  digitalReadTimerPin: split(digitalRead?.onTimerPin, 63),
  millis: split(millis?.cycles, 6),
  micros: split(micros?.cycles, 14),
  attachInterrupt: split(attachInterrupt?.cycles, 25),
  detachInterrupt: split(detachInterrupt?.cycles, 16),
  serialBegin: split(begin?.cycles, 680),
  /** Behind `flush`: four bits cleared. */
  serialEnd: { before: 20, after: 20 },
  /** Of one byte straight to the data register. */
  writeToRegister: split(write?.cycles, 40),
  writeToBuffer: split(write?.otherwise, 58),
  available: split(available?.cycles, 10),
  availableForWrite: split(availableForWrite?.cycles, 12),
  read: split(read?.cycles, 12),
  readNothing: split(read?.otherwise, 12),
  peek: split(peek?.cycles, 12),
  peekNothing: split(peek?.otherwise, 12),
  flush: split(flush?.cycles, 12),
} as const satisfies Readonly<Record<string, FunctionCycles>>;

/** Of the core's handlers, interrupt response and RETI included. */
export const handlerCycles = {
  timerOverflow: split(coreHandlerCycles.TIMER0_OVF_vect, 50),
  registerEmpty: split(coreHandlerCycles.USART_UDRE_vect, 62),
  received: split(coreHandlerCycles.USART_RX_vect, 40),
  /** Around the author's function, whose CALL and RET it counts itself. */
  pinInterrupt: split(coreHandlerCycles.INT0_vect, 42),
} as const satisfies Readonly<Record<string, FunctionCycles>>;

/** What `delayMicroseconds` takes beside its loop, and where it returns at once. */
export const delayMicrosecondsCycles = {
  /** At 16 MHz the loop takes 16 cycles for each microsecond, but for the turns that are taken off, 20 and the last 1. */
  aroundLoop: (delayMicroseconds?.cycles ?? 0) + 21,
  atOnce: delayMicroseconds?.otherwise ?? 0,
} as const;

const bits = 8;
const eachWrite = digitalWrite?.cycles ?? 0;
const eachRead = digitalRead?.cycles ?? 0;

/** Of one turn of the core's loops, and what they add to the functions that they call. */
export const turnCycles = {
  /** `main` between two calls of `loop`. */
  main: 6,
  delay: 55,
  /** `delayMicroseconds`: SBIW and BRNE (`wiring.c`: 2 cycles each). */
  delayMicroseconds: 4,
  waitForRoom: 10,
  flush: 12,
  /** `wiring_pulse.S`, counted by the AVR Instruction Set Manual. */
  pulseAwaited: 11,
  pulseMeasured: 16,
  /** `Print::write` around each byte, and `printNumber` for each digit; measured on the compiled core. */
  printedByte: 30,
  printedDigit: 615,
  /** Three writes for each bit. */
  shiftOutBit: Math.round((shiftOut?.cycles ?? 0) / bits - 3 * eachWrite),
  /** Two writes and a read. */
  shiftInBit: Math.round((shiftIn?.cycles ?? 0) / bits - 2 * eachWrite - eachRead),
} as const;
