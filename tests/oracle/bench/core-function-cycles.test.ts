import { afterAll, expect, test } from "vitest";
import {
  type CoreFunctionCycles,
  coreFunctionCycles,
  coreHandlerCycles,
} from "../../../src-core/bench/engines/core-function-cycles.ts";
import { removeCompiledCore } from "../interpreter/compile.ts";
import { measureCoreCalls } from "./measured-calls.ts";

/*
 * The table of the core's cycles beside the core (Debian package arduino-core-avr), compiled and run on a simulated
 * ATmega328P. Ways through a function that differ by its arguments have to be within a tenth, or four cycles, of the one
 * figure that stands for them.
 */

type Way = keyof CoreFunctionCycles;

interface Measured {
  readonly name: string;
  readonly way: Way;
  readonly call: string;
  readonly before?: string;
}

const levels = ["LOW", "HIGH"];
const plainPins = [2, 7, 13];
const timerPins = [3, 5, 6, 9, 10, 11];

const onPins = (name: string, call: (pin: number) => readonly string[]): readonly Measured[] => [
  ...plainPins.flatMap((pin) => call(pin).map((text) => ({ name, way: "cycles" as const, call: text }))),
  ...timerPins.flatMap((pin) => call(pin).map((text) => ({ name, way: "onTimerPin" as const, call: text }))),
];

const one = (name: string, call: string, way: Way = "cycles", before = ""): Measured => ({
  name,
  way,
  call,
  before,
});

/** Bytes can be sent at once, or have to wait. */
const ready = "GPIOR1 = 0x20;";
const busy = "GPIOR1 = 0;";
const sent = "GPIOR1 = 0x60;";

/** In the order in which the sketch makes them: the serial buffers fill and empty. */
const measured: readonly Measured[] = [
  ...["INPUT", "OUTPUT", "INPUT_PULLUP"].map((mode) => one("pinMode", `pinMode(7, ${mode})`)),
  ...onPins("digitalWrite", (pin) => levels.map((level) => `digitalWrite(${pin}, ${level})`)),
  ...onPins("digitalRead", (pin) => [`digitalRead(${pin})`]),
  ...[3, 5, 9].map((pin) => one("analogWrite", `analogWrite(${pin}, 100)`)),
  ...[3, 5, 9].map((pin) => one("analogWrite", `analogWrite(${pin}, 255)`, "otherwise")),
  one("analogRead", "analogRead(A1)"),
  one("analogReference", "analogReference(DEFAULT)"),
  one("millis", "millis()"),
  one("micros", "micros()"),
  one("delayMicroseconds", "delayMicroseconds(1)", "otherwise"),
  ...[0x00, 0x55, 0xff].map((byte) => one("shiftOut", `shiftOut(2, 4, MSBFIRST, ${byte})`)),
  one("shiftOut", "shiftOut(3, 5, LSBFIRST, 0x55)", "onTimerPin"),
  one("shiftIn", "shiftIn(2, 4, LSBFIRST)"),
  one("attachInterrupt", "attachInterrupt(0, onEdge, FALLING)"),
  one("attachInterrupt", "attachInterrupt(1, onEdge, CHANGE)"),
  one("HardwareSerial::begin", "Serial.begin(1200, SERIAL_7N1)"),
  one("HardwareSerial::write", "Serial.write('M')", "cycles", ready),
  one("HardwareSerial::write", "Serial.write('M')", "otherwise", busy),
  one("HardwareSerial::write", "Serial.write('3')", "otherwise", busy),
  one("HardwareSerial::availableForWrite", "Serial.availableForWrite()"),
];

const measuredLater: readonly Measured[] = [
  one("HardwareSerial::available", "Serial.available()"),
  one("HardwareSerial::peek", "Serial.peek()"),
  one("HardwareSerial::read", "Serial.read()"),
  one("HardwareSerial::read", "Serial.read()", "otherwise"),
  one("HardwareSerial::peek", "Serial.peek()", "otherwise"),
  one("HardwareSerial::flush", "Serial.flush()", "cycles", sent),
];

/** Vectors by number (ATmega328P data sheet, "Interrupt Vectors", from 0); both bytes that wait are sent. */
const handlers: readonly (readonly [string, number])[] = [
  ["TIMER0_OVF_vect", 16],
  ["USART_UDRE_vect", 19],
  ["USART_UDRE_vect", 19],
  ["INT0_vect", 1],
  ["INT1_vect", 2],
  ["USART_RX_vect", 18],
];
const afterHandlers = [...measuredLater, one("detachInterrupt", "detachInterrupt(0)")];

/** CALL and RET of an attached function, which count for that function. */
const attached = 8;

afterAll(removeCompiledCore);

const delays = [2, 3, 52, 833, 5000];

test("every figure is what the compiled core takes, within a tenth or four cycles", async () => {
  const plain = ({ call, before = "" }: Measured) => ({ before, call });
  const cycles = await measureCoreCalls([
    ...measured.map(plain),
    ...handlers.map(([, vector]) => ({ before: "", call: "", vector })),
    ...afterHandlers.map(plain),
    ...delays.map((us) => ({ before: "", call: `delayMicroseconds(${us})` })),
  ]);
  const lines = [
    ...measured.map(({ name, way, call }) => ({ what: call, stated: coreFunctionCycles[name]?.[way] })),
    ...handlers.map(([name]) => ({
      what: name,
      stated: (coreHandlerCycles[name] ?? 0) + (name.startsWith("INT") ? attached : 0),
    })),
    ...afterHandlers.map(({ name, way, call }) => ({ what: call, stated: coreFunctionCycles[name]?.[way] })),
    ...delays.map((us) => {
      const { cycles: fixed = 0, each = 0 } = coreFunctionCycles.delayMicroseconds ?? {};
      return { what: `delayMicroseconds(${us})`, stated: fixed + each * us };
    }),
  ].map((line, index) => ({ ...line, cycles: cycles[index] ?? 0 }));
  process.stdout.write(
    lines.map(({ what, stated, cycles: real }) => `${what.padEnd(40)}${real} ${stated}\n`).join(""),
  );
  const off = lines.filter(
    ({ stated, cycles: real }) => Math.abs((stated ?? 0) - real) > Math.max(4, real / 10),
  );
  expect(off).toEqual([]);
  const named = [...measured, ...afterHandlers].map(({ name }) => name);
  expect(new Set(named)).toEqual(new Set(Object.keys(coreFunctionCycles)));
  expect(new Set(handlers.map(([name]) => name))).toEqual(new Set(Object.keys(coreHandlerCycles)));
});
