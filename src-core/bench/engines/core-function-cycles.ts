/** What a function of the sketch core takes, in cycles from CALL to RET; what loads its arguments is the caller's. */
export interface CoreFunctionCycles {
  readonly cycles: number;
  /** On a pin that a timer can drive, which the function first asks for; undefined where that is no matter. */
  readonly onTimerPin?: number;
  /** With the other answer: a byte that has to wait in the buffer, or none that is there. */
  readonly otherwise?: number;
  /** For each unit of the argument beyond what `cycles` has; a negative sum is 0. */
  readonly each?: number;
}

/**
 * Functions of the sketch core on an ATmega328P at 16 MHz, by qualified name. Measured on arduino-core-avr 1.8.7 (Debian
 * 12), compiled with avr-gcc 5.4 -Os without link-time optimisation and run on avr8js; where ways through a function
 * differ by a few cycles, the middle of them.
 */
export const coreFunctionCycles: Readonly<Record<string, CoreFunctionCycles>> = {
  pinMode: { cycles: 70 },
  digitalWrite: { cycles: 70, onTimerPin: 89 },
  digitalRead: { cycles: 62, onTimerPin: 80 },
  analogWrite: { cycles: 119, otherwise: 179 },
  // Without the conversion: see `conversionCycles`.
  analogRead: { cycles: 35 },
  analogReference: { cycles: 10 },
  millis: { cycles: 19 },
  micros: { cycles: 47 },
  // A loop of four cycles, four times for each microsecond; one or none takes 12.
  delayMicroseconds: { cycles: -4, each: 16, otherwise: 12 },
  shiftOut: { cycles: 1836, onTimerPin: 2264 },
  shiftIn: { cycles: 1933 },
  attachInterrupt: { cycles: 32 },
  detachInterrupt: { cycles: 28 },
  "HardwareSerial::begin": { cycles: 714 },
  "HardwareSerial::write": { cycles: 72, otherwise: 88 },
  "HardwareSerial::availableForWrite": { cycles: 25 },
  "HardwareSerial::available": { cycles: 19 },
  "HardwareSerial::read": { cycles: 31, otherwise: 18 },
  "HardwareSerial::peek": { cycles: 22, otherwise: 18 },
  // Nothing is left to wait for.
  "HardwareSerial::flush": { cycles: 38 },
};

/**
 * Handlers that the core brings, by vector: from the response to the interrupt to RETI. Those of attached functions are
 * without the function that they call.
 */
export const coreHandlerCycles: Readonly<Record<string, number>> = {
  TIMER0_OVF_vect: 100,
  USART_RX_vect: 79,
  USART_UDRE_vect: 130,
  INT0_vect: 78,
  INT1_vect: 78,
};

/**
 * An analogue conversion takes 13 cycles of its clock, which the core divides by 128 at 16 MHz (ATmega328P data sheet,
 * "ADC Conversion Time"; the core's wiring.c).
 */
export const conversionCycles = 13 * 128;
