/**
 * Cycles of the sketch core's functions, CALL and RET included, what loads their arguments left out. `before` is what
 * goes by before the function reads or writes what it is called for, `after` the rest. Measured on core and sketch
 * compiled as the core's `platform.txt` says (avr-gcc -Os -flto) and run on the bench's chip, where no other source is
 * named.
 */
export interface FunctionCycles {
  readonly before: number;
  readonly after: number;
}

export const functionCycles = {
  pinModeInput: { before: 55, after: 17 },
  pinModePullUp: { before: 56, after: 18 },
  pinModeOutput: { before: 55, after: 11 },
  digitalWrite: { before: 58, after: 13 },
  digitalRead: { before: 46, after: 16 },
  /** More for a pin that a timer can drive: PWM is switched off first. In front. */
  timerPin: { before: 15, after: 0 },
  millis: { before: 2, after: 17 },
  micros: { before: 14, after: 33 },
  attachInterrupt: { before: 23, after: 5 },
  detachInterrupt: { before: 7, after: 12 },
  serialBegin: { before: 36, after: 28 },
  serialEnd: { before: 40, after: 40 },
  /** Of one byte straight to the data register. */
  writeToRegister: { before: 40, after: 34 },
  writeToBuffer: { before: 60, after: 33 },
  available: { before: 12, after: 11 },
  availableForWrite: { before: 12, after: 13 },
  read: { before: 10, after: 10 },
  flush: { before: 8, after: 4 },
} as const satisfies Readonly<Record<string, FunctionCycles>>;

/** Of the core's handlers, interrupt response and RETI included. */
export const handlerCycles = {
  timerOverflow: { before: 50, after: 50 },
  registerEmpty: { before: 62, after: 64 },
  /** The last byte switches the interrupt off. More than the others, behind. */
  lastByte: { before: 0, after: 9 },
  /** From the listing of avr-gcc. */
  received: { before: 50, after: 48 },
  /** Around the author's function, whose CALL and RET it counts itself. */
  pinInterrupt: { before: 42, after: 35 },
} as const satisfies Readonly<Record<string, FunctionCycles>>;

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
  shiftOutBit: 62,
  shiftInBit: 77,
} as const;
