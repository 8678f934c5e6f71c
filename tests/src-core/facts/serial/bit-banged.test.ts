import { describe, expect, test } from "vitest";
import { factsOf } from "../../checks/harness.ts";

const bitsOf = (code: string, notes = "// @wire serial tx=8") =>
  factsOf({ "ferry.ino": `// @wire board atmega328p clock=16MHz\n${notes}\n${code}` }).serial.bitBanged.map(
    ({ pin, bits }) => ({ pin, bits: bits.map(({ part, us }) => `${part} ${us}`) }),
  );

const frame = (start: number, data: number, count: number, stop: number) => [
  `start ${start}`,
  ...Array.from({ length: count }, () => `data ${data}`),
  `stop ${stop}`,
];

const main = "void setup() { pinMode(8, OUTPUT); }\nvoid loop() { put(PINC); }\n";

describe("bytes sent bit by bit", () => {
  test("a loop over the bits", () => {
    const code = `void put(uint8_t value) {
  digitalWrite(8, LOW);
  delayMicroseconds(800);
  for (uint8_t i = 0; i < 7; i++) {
    digitalWrite(8, (value >> i) & 1);
    delayMicroseconds(810);
  }
  digitalWrite(8, HIGH);
  delayMicroseconds(820);
}
${main}`;
    expect(bitsOf(code)).toEqual([{ pin: "PB0", bits: frame(800, 810, 7, 820) }]);
  });

  test("each bit by a helper, with the delay in it", () => {
    const code = `void bitOut(bool level) {
  if (level) PORTB |= _BV(0); else PORTB &= ~_BV(0);
  delayMicroseconds(833);
}
void put(uint8_t value) {
  bitOut(0);
  for (uint8_t i = 0; i < 8; i++) { bitOut(value & 1); value >>= 1; }
  bitOut(1);
}
${main}`;
    expect(bitsOf(code)).toEqual([{ pin: "PB0", bits: frame(833, 833, 8, 833) }]);
  });

  test("a byte that one side of a branch sends, and a longer text on the other", () => {
    const code = `void bitOut(bool level) {
  if (level) PORTB |= _BV(0); else PORTB &= ~_BV(0);
  delayMicroseconds(831);
}
void put(uint8_t value) {
  bitOut(0);
  for (uint8_t i = 0; i < 7; i++) { bitOut(value & 1); value >>= 1; }
  bitOut(1);
}
void setup() { pinMode(8, OUTPUT); }
void loop() {
  if (PIND & _BV(4)) {
    if (PIND & _BV(5)) put(PINC);
  } else {
    put(PINC);
    put(PINC);
  }
}
`;
    expect(bitsOf(code)).toEqual([{ pin: "PB0", bits: frame(831, 831, 7, 831) }]);
  });

  test("the delay in front of the level, and no loop at all", () => {
    const bit = (n: number) => `digitalWrite(8, bitRead(value, ${n})); delayMicroseconds(830);`;
    const code = `void put(uint8_t value) {
  digitalWrite(8, LOW); delayMicroseconds(830);
  ${[0, 1, 2, 3, 4, 5, 6].map(bit).join("\n  ")}
  digitalWrite(8, HIGH);
}
${main}`;
    expect(bitsOf(code)).toEqual([{ pin: "PB0", bits: frame(830, 830, 7, 0).slice(0, -1) }]);
  });

  // avr-libc, util/delay_basic.h: a turn of _delay_loop_2 takes four cycles; 3333 turns at 16 MHz are 833.25 us.
  test("delays in cycles of the clock", () => {
    const code = `#include <util/delay_basic.h>
void put(uint8_t value) {
  PORTB &= ~1;
  _delay_loop_2(3333);
  for (uint8_t i = 0; i < 7; i++) {
    if (value & 1) PORTB |= 1; else PORTB &= ~1;
    value >>= 1;
    _delay_loop_2(3333);
  }
  PORTB |= 1;
  _delay_loop_2(3333);
}
${main}`;
    expect(bitsOf(code)).toEqual([{ pin: "PB0", bits: frame(833.25, 833.25, 7, 833.25) }]);
  });

  test("a constant, whose bits are all known", () => {
    const code = `void put(uint8_t value) {
  digitalWrite(8, LOW);
  delayMicroseconds(833);
  for (uint8_t i = 0; i < 8; i++) {
    digitalWrite(8, (value >> i) & 1);
    delayMicroseconds(833);
  }
  digitalWrite(8, HIGH);
  delayMicroseconds(900);
}
void setup() { put('U'); }
void loop() {}
`;
    expect(bitsOf(code)).toEqual([{ pin: "PB0", bits: frame(833, 833, 8, 900) }]);
  });

  test("nothing where another pin moves in between, or something is waited for", () => {
    const clocked = `void put(uint8_t value) {
  digitalWrite(8, LOW);
  for (uint8_t i = 0; i < 8; i++) {
    digitalWrite(8, value & 1);
    digitalWrite(9, HIGH);
    delayMicroseconds(5);
    digitalWrite(9, LOW);
    value >>= 1;
  }
  digitalWrite(8, HIGH);
}
${main}`;
    const waiting = `void put(uint8_t value) {
  digitalWrite(8, LOW);
  delayMicroseconds(100);
  for (uint8_t i = 0; i < 8; i++) {
    while (digitalRead(2)) {}
    digitalWrite(8, value & 1);
    value >>= 1;
    delayMicroseconds(10);
  }
  digitalWrite(8, HIGH);
}
${main}`;
    expect(bitsOf(clocked)).toEqual([]);
    expect(bitsOf(clocked, "")).toEqual([]);
    expect(bitsOf(waiting)).toEqual([]);
  });

  test("a blinking light is no byte", () => {
    const code = `void put(uint8_t) {
  for (uint8_t i = 0; i < 10; i++) {
    digitalWrite(8, HIGH);
    delay(200);
    digitalWrite(8, LOW);
    delay(200);
  }
}
${main}`;
    expect(bitsOf(code, "")).toEqual([]);
  });

  test("nothing is looked for on other pins than the one that is said", () => {
    const code = `void put(uint8_t value) {
  digitalWrite(9, LOW);
  delayMicroseconds(800);
  for (uint8_t i = 0; i < 7; i++) {
    digitalWrite(9, (value >> i) & 1);
    delayMicroseconds(800);
  }
  digitalWrite(9, HIGH);
}
${main}`;
    expect(bitsOf(code)).toEqual([]);
    expect(bitsOf(code, "")).toHaveLength(1);
  });
});
