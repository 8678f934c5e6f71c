import { describe, expect, test } from "vitest";
import { addressOf } from "../../../../src-core/reader/constants/address.ts";
import { evaluate } from "../../../../src-core/reader/constants/evaluate.ts";
import type { TypedExpression } from "../../../../src-core/reader/typed/nodes.ts";
import { walkUnit } from "../../../../src-core/reader/typed/walk.ts";
import { avrModel } from "../../../../src-core/reader/types/data-models.ts";
import { readFiles } from "./read-files.ts";

async function read(source: string, name = "main.c") {
  const program = await readFiles({ [name]: source });
  const typed = program.units[0]?.typed;
  if (typed === undefined) throw new Error("nothing was read");
  return { program, typed };
}

/** All assignments of a unit, as address and value. */
async function writes(source: string): Promise<readonly (readonly [number | undefined, bigint | string])[]> {
  const { typed } = await read(source);
  const found: (readonly [number | undefined, bigint | string])[] = [];
  walkUnit(typed, {
    expression(expression) {
      if (expression.kind !== "assign" && expression.kind !== "compound-assign") return true;
      const value = evaluate(expression.value, avrModel);
      found.push([
        addressOf(expression.target, avrModel),
        value.kind === "integer" ? value.value : value.kind,
      ]);
      return true;
    },
  });
  return found;
}

/** Addresses: ATmega328P datasheet, "Register Summary" (memory addresses). */
describe("registers", () => {
  test("a USART set-up", async () => {
    const source = `
#include <avr/io.h>
#define BAUD 1200UL
#define DIVISOR (F_CPU / (16UL * BAUD) - 1)
void init(void) {
  UBRR0H = DIVISOR >> 8;
  UBRR0L = DIVISOR & 0xFF;
  UCSR0B = _BV(RXEN0) | (1 << TXEN0);
  UCSR0C = (1 << UCSZ01);
  UBRR0 = DIVISOR;
  DDRD |= (1 << PD2);
  PORTD &= ~(1 << PD2);
  OCR1A = 13333;
}
`;
    expect(await writes(source)).toEqual([
      [0xc5, 3n],
      [0xc4, 64n],
      [0xc1, 0x18n],
      [0xc2, 4n],
      [0xc4, 832n],
      [0x2a, 4n],
      [0x2b, -5n],
      [0x88, 13333n],
    ]);
  });
});

describe("interrupts and program memory", () => {
  test("handlers have their vectors", async () => {
    const { typed } = await read(
      "#include <avr/io.h>\n#include <avr/interrupt.h>\nISR(USART_RX_vect) { (void)UDR0; }\nISR(INT0_vect, ISR_NOBLOCK) { }\nint main(void) { sei(); }\n",
    );
    const handlers = typed.functions.filter(({ standIn }) => !standIn);
    expect(handlers.map(({ vector }) => vector)).toEqual(["USART_RX_vect", "INT0_vect", undefined]);
    expect(handlers.every(({ definition }) => definition !== undefined)).toBe(true);
  });

  test("tables in program memory are read through pgm_read_byte", async () => {
    const { typed } = await read(`
#include <avr/pgmspace.h>
static const uint8_t knock[] PROGMEM = { 200, 100, 80 };
uint8_t second(void) { return pgm_read_byte(&knock[1]); }
`);
    expect(typed.variables.map(({ programMemory }) => programMemory)).toEqual([true]);
    const body = typed.functions.find(({ name }) => name === "second")?.definition?.body;
    const [statement] = body?.statements ?? [];
    if (statement?.kind !== "return" || statement.value === undefined) throw new Error("no return");
    expect(evaluate(statement.value, avrModel)).toMatchObject({ value: 100n });
  });
});

test("a sketch is understood as a whole", async () => {
  const source = `
#include <SoftwareSerial.h>
const byte CLOCK = 2, DATA = 3;
SoftwareSerial pc(8, 9, true);
volatile byte bits[11], head;
String line;
template <typename T> T clip(T v, T low, T high) { return v < low ? low : v > high ? high : v; }
void setup() {
  pinMode(CLOCK, INPUT_PULLUP);
  pc.begin(1200);
  Serial.begin(1200, SERIAL_7N1);
  attachInterrupt(digitalPinToInterrupt(CLOCK), onClock, FALLING);
  Serial.println(F("ready"));
  line = String(5) + "x";
}
void loop() {
  int dx = constrain(bits[1], -127, 127), dy = clip<int>(bits[2], -127, 127);
  pc.write((uint8_t)(0x40 | ((dy & 0xC0) >> 4) | ((dx & 0xC0) >> 6)));
  if (line.length() > 3 && line[0] == 'M') delayMicroseconds(100);
  for (auto &b : bits) b = 0;
}
void onClock() { if (++head == sizeof(bits)) head = 0; bits[head] = digitalRead(DATA); }
`;
  const { program, typed } = await read(source, "adapter.ino");
  expect(program.problems).toEqual([]);
  const open: TypedExpression[] = [];
  walkUnit(typed, {
    expression(expression) {
      if (expression.kind === "unresolved" || expression.type.kind === "unknown") open.push(expression);
      return true;
    },
  });
  expect(open.map(({ at }) => at.first.text)).toEqual([]);
});
