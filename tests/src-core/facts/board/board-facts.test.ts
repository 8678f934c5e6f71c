import { describe, expect, test } from "vitest";
import { factsOf } from "../../checks/harness.ts";

describe("the clock", () => {
  const clockOf = (files: Readonly<Record<string, string>>) => factsOf(files).board.clock;
  const main = "int main(void) { return 0; }\n";

  test("a note goes before F_CPU", () => {
    const files = { "main.c": `// @wire board atmega328p clock=8MHz\n#define F_CPU 16000000UL\n${main}` };
    expect(clockOf(files)).toMatchObject({ hz: 8_000_000, by: "said" });
  });

  test.each([
    ["16000000UL", 16_000_000],
    ["16000000", 16_000_000],
    ["(8000000L)", 8_000_000],
    ["16e6", 16_000_000],
    ["(8 * 1000000UL)", 8_000_000],
    ["7372800", 7_372_800],
  ])("F_CPU %s", (text, hz) => {
    expect(clockOf({ "main.c": `#define F_CPU ${text}\n${main}` })).toMatchObject({ hz, by: "F_CPU" });
  });

  test("F_CPU in a header, and where it stands", () => {
    const files = { "board.h": "#define F_CPU 1000000UL\n", "main.c": `#include "board.h"\n${main}` };
    expect(clockOf(files)).toMatchObject({ hz: 1_000_000, span: { file: "board.h" } });
  });

  test("unknown where nothing says it, where units differ, and where it is computed", () => {
    expect(clockOf({ "main.c": main })).toBeUndefined();
    const differing = { "a.c": "#define F_CPU 1000000UL\n", "main.c": `#define F_CPU 8000000UL\n${main}` };
    expect(clockOf(differing)).toBeUndefined();
    expect(clockOf({ "main.c": `#define F_CPU (XTAL / 2)\n${main}` })).toBeUndefined();
  });
});

describe("what handlers and main code share", () => {
  const head = "// @wire board atmega328p clock=16MHz\n#include <avr/io.h>\n#include <avr/interrupt.h>\n";
  const sharedIn = (code: string) => factsOf({ "main.c": head + code }).board.shared.map(({ name }) => name);

  test("what one side writes and the other reads, and nothing else", () => {
    const code = `static uint8_t written, read, both, alone, copied;
ISR(INT0_vect) { written = PIND; both++; alone++; if (read) copied = alone; }
int main(void) { sei(); for (;;) { read = written; both = 0; PORTB = both; } }
`;
    expect(sharedIn(code).sort()).toEqual(["both", "read", "written"]);
  });

  test("two members of one struct are two things", () => {
    const code = `static struct { uint8_t a, b; } pair;
ISR(INT0_vect) { pair.a = PIND; }
int main(void) { sei(); for (;;) PORTB = pair.b; }
`;
    expect(sharedIn(code)).toEqual([]);
  });

  test("through functions on both sides", () => {
    const code = `static uint8_t level;
static void note(void) { level = PIND; }
static uint8_t last(void) { return level; }
ISR(INT0_vect) { note(); }
int main(void) { sei(); for (;;) PORTB = last(); }
`;
    expect(sharedIn(code)).toEqual(["level"]);
  });

  test("not what runs before interrupts come, wherever they are let in", () => {
    const code = `static uint8_t mask;
static volatile uint8_t hits;
static void start(void) { mask = 4; EIMSK = _BV(INT0); sei(); }
ISR(INT0_vect) { if (PIND & mask) hits++; }
int main(void) { mask = 2; start(); for (;;) PORTB = hits; }
`;
    expect(sharedIn(code)).toEqual(["hits"]);
  });

  test("not what happens while interrupts are off, in a callee as well", () => {
    const code = `static uint16_t ticks;
static uint16_t read(void) { return ticks; }
static uint16_t now(void) { uint8_t old = SREG; cli(); uint16_t copy = read(); SREG = old; return copy; }
ISR(TIMER0_OVF_vect) { ticks++; }
int main(void) { sei(); for (;;) PORTB = now(); }
`;
    expect(sharedIn(code)).toEqual([]);
  });

  test("but what happens after they are on again", () => {
    const code = `static uint16_t ticks;
ISR(TIMER0_OVF_vect) { ticks++; }
int main(void) { sei(); for (;;) { cli(); PORTB = ticks; sei(); PORTB = ticks; } }
`;
    expect(sharedIn(code)).toEqual(["ticks"]);
  });

  test("members of a class that a header declares for two files", () => {
    const files = {
      "port.h": "#pragma once\n#include <Arduino.h>\nclass Port { public: void fell(); uint8_t count; };\n",
      "port.cpp": '#include "port.h"\nvoid Port::fell() { count++; }\n',
      "ferry.ino": `// @wire board atmega328p clock=16MHz
#include "port.h"
Port port;
void fell() { port.fell(); }
void setup() { attachInterrupt(digitalPinToInterrupt(2), fell, FALLING); }
void loop() { digitalWrite(13, port.count); }
`,
    };
    expect(factsOf(files).board.shared.map(({ name }) => name)).toEqual(["count"]);
  });
});

describe("handlers that wait", () => {
  const blockingIn = (handler: string) =>
    factsOf({
      "main.c": `// @wire board atmega328p clock=16MHz
#define F_CPU 16000000UL
#include <avr/io.h>
#include <avr/interrupt.h>
#include <util/delay.h>
${handler}
int main(void) { sei(); for (;;) { } }
`,
    }).board.blocking;

  test("each delay with its turns, and all of a handler together", () => {
    const found = blockingIn(
      "ISR(INT0_vect) { for (uint8_t i = 0; i < 5; i++) _delay_us(4); _delay_us(7); }",
    );
    expect(found).toMatchObject([
      { kind: "delay", each: 4, us: 20, together: 27 },
      { kind: "delay", each: 7, us: 7, together: 27 },
    ]);
  });

  test("a handler that lets others in is left alone", () => {
    expect(blockingIn("ISR(INT0_vect, ISR_NOBLOCK) { _delay_ms(5); }")).toEqual([]);
    expect(blockingIn("ISR(INT0_vect) { sei(); _delay_ms(5); }")).toEqual([]);
  });
});

describe("pins and their roles", () => {
  // ATmega328P: RXD is PD0, TXD is PD1: "Alternate Functions of Port D" of the datasheet.
  test("those that are said, and those of a UART as far as it is on", () => {
    const { board } = factsOf({
      "main.c": `// @wire board atmega328p clock=16MHz
// @wire ps2 clock=PD2 data=3
// @wire serial uart=0 rts=A0
#include <avr/io.h>
int main(void) { UBRR0 = 832; UCSR0B = _BV(TXEN0); return 0; }
`,
    });
    expect(board.pinRoles.map(({ pin, line }) => [pin, line])).toEqual([
      ["PD2", "clock"],
      ["PD3", "data"],
      ["PC0", "rts"],
      ["PD1", "uart-tx"],
    ]);
  });
});
