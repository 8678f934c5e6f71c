import { requestHoldShort } from "../../../../src-core/checks/ps2/request-hold-short.ts";
import { ruleTests } from "../harness.ts";
import { classBased, interruptDriven, listens, pasted, registers, sketch } from "./hosts.ts";

// At least 100 us: The PS/2 Mouse/Keyboard Protocol (2003), Host-to-Device; TouchPad Interfacing Guide, 3.2.2.
// More than 60 us, for keyboards: Technical Reference, 5170, Keyboard Data Input.

const enable = `int main(void) {
  command(0xF4);
${listens}}
`;
const enableSketch = `void setup() {
  command(0xF4);
}

void loop() {
  reply();
}
`;

ruleTests(requestHoldShort, {
  wrong: {
    "a constant delay between port writes": {
      "main.c": registers(
        {
          hold: "60",
          under:
            "  //        ^^ ps2/request-hold-short: held low for 60 us before the request to send; the mouse may need 100 us\n",
        },
        enable,
      ),
    },
    "a sketch with core functions": {
      "mouse.ino": sketch(
        { hold: "80", under: "  //                ^^ ps2/request-hold-short: 80 us\n" },
        enableSketch,
      ),
    },
    "a constant behind macros, a pin that is only turned round": {
      "tiny.c": pasted({ hold: "99", under: "" }, enable).replace(
        "  _delay_us(HOLD_US);\n",
        "  _delay_us(HOLD_US);\n  //        ^^^^^^^ ps2/request-hold-short: 99 us\n",
      ),
    },
    "a class constant": {
      "mouse.ino": classBased({ hold: "50" }, enableSketch).replace(
        "    delayMicroseconds(holdUs);\n",
        "    delayMicroseconds(holdUs);\n    //                ^^^^^^ ps2/request-hold-short: 50 us\n",
      ),
    },
    "started in main code, finished by the handler": {
      "main.c": interruptDriven(
        { hold: "15.5", under: "  //        ^^^^ ps2/request-hold-short: 16 us\n" },
        `int main(void) {
  EICRA = _BV(ISC01);
  sei();
  command(0xF4);
${listens}}
`,
      ),
    },
    "two delays that do not add up to enough": {
      "main.c": registers(
        { hold: "40", under: "  _delay_us(50);\n  //        ^^ ps2/request-hold-short: 90 us\n" },
        enable,
      ),
    },
    "a delay in a counted loop": {
      "main.c": registers({}, enable).replace(
        "  _delay_us(100);\n",
        "  for (uint8_t i = 0; i < 9; i++) {\n    _delay_us(10);\n    //        ^^ ps2/request-hold-short: 90 us\n  }\n",
      ),
    },
    "no delay at all": {
      "tiny.c": pasted({}, enable).replace(
        "  PULL(CLOCK);\n  _delay_us(HOLD_US);\n",
        "  PULL(CLOCK);\n//^^^^^^^^^^^ ps2/request-hold-short: without a delay\n",
      ),
    },
    "a helper that waits as long as it is told": {
      "main.c": registers({}, enable)
        .replace("  _delay_us(100);\n", "  wait_us(70);\n  //      ^^ ps2/request-hold-short: 70 us\n")
        .replace(
          "static void low(",
          "static void wait_us(uint8_t us) {\n  while (us--) {\n    _delay_us(1);\n  }\n}\n\nstatic void low(",
        ),
    },
    "a constant of which a note says what it is": {
      "hold.h": `/* @wire means ps2.request-hold */
#define HOLD 52
/*           ^^ ps2/request-hold-short: HOLD is 52 us; the clock has to be held low for at least 100 us */
`,
      "main.c": `// @wire board atmega328p clock=16MHz
#include "hold.h"
int main(void) {
  return HOLD;
}
`,
    },
  },
  right: {
    "exactly 100 us": { "main.c": registers({ hold: "100" }, enable) },
    "a sketch that holds longer": { "mouse.ino": sketch({ hold: "150" }, enableSketch) },
    "names pasted together": { "tiny.c": pasted({ hold: "200" }, enable) },
    "a class": { "mouse.ino": classBased({ hold: "110" }, enableSketch) },
    "started in main code, finished by the handler": {
      "main.c": interruptDriven({}, `int main(void) {\n  sei();\n  command(0xF4);\n${listens}}\n`),
    },
    "two delays that add up": {
      "main.c": registers({ hold: "50", under: "  _delay_us(50);\n" }, enable),
    },
    "ten times 10 us": {
      "main.c": registers({}, enable).replace(
        "  _delay_us(100);\n",
        "  for (uint8_t i = 0; i < 10; i++) {\n    _delay_us(10);\n  }\n",
      ),
    },
    "a hundred turns of one microsecond": {
      "main.c": registers({}, enable)
        .replace("  _delay_us(100);\n", "  wait_us(100);\n")
        .replace(
          "static void low(",
          "static void wait_us(uint16_t us) {\n  while (us--) {\n    _delay_us(1);\n  }\n}\n\nstatic void low(",
        ),
    },
    "a loop on micros()": {
      "mouse.ino": sketch({}, enableSketch).replace(
        "  delayMicroseconds(100);\n",
        "  unsigned long since = micros();\n  while (micros() - since < 120) ;\n",
      ),
    },
    "a loop whose length nobody knows": {
      "main.c": registers({}, enable).replace(
        "  _delay_us(100);\n",
        "  for (volatile uint16_t i = 0; i < 300; i++) {\n  }\n",
      ),
    },
    "part of the hold after data was pulled low": {
      "main.c": registers({ hold: "60" }, enable).replace(
        "  low(DATA);\n  release(CLOCK);\n",
        "  low(DATA);\n  _delay_us(40);\n  release(CLOCK);\n",
      ),
    },
    "the clock held to keep the mouse quiet, for a moment only": {
      "main.c": registers(
        {},
        `void pause(void) {
  low(CLOCK);
  _delay_us(20);
  release(CLOCK);
}

int main(void) {
  command(0xF4);
  for (;;) {
    reply();
    pause();
  }
}
`,
      ),
    },
    "another pair of pins that looks a little alike: a display": {
      "main.c": `// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <util/delay.h>
static void nibble(uint8_t value) {
  DDRB |= 0x3F;
  PORTB &= ~_BV(PB4);
  _delay_us(1);
  PORTB &= ~0x0F;
  PORTB |= value & 0x0F;
  PORTB |= _BV(PB4);
  _delay_us(1);
  PORTB &= ~_BV(PB4);
}
int main(void) {
  nibble(0x03);
  for (;;) {
  }
}
`,
    },
    "a two-wire bus": {
      "bus.ino": `const int SDA_PIN = 4, SCL_PIN = 5;
void low(int pin) { digitalWrite(pin, LOW); pinMode(pin, OUTPUT); }
void high(int pin) { pinMode(pin, INPUT_PULLUP); }
bool writeByte(byte value) {
  low(SDA_PIN);
  delayMicroseconds(5);
  low(SCL_PIN);
  for (int i = 0; i < 8; i++) {
    if (value & 0x80) high(SDA_PIN); else low(SDA_PIN);
    value <<= 1;
    delayMicroseconds(5);
    high(SCL_PIN);
    while (!digitalRead(SCL_PIN)) ;
    delayMicroseconds(5);
    low(SCL_PIN);
  }
  high(SDA_PIN);
  high(SCL_PIN);
  bool taken = !digitalRead(SDA_PIN);
  low(SCL_PIN);
  return taken;
}
void setup() { writeByte(0x78); }
void loop() {}
`,
    },
  },
});
