import { parityUnchecked } from "../../../../src-core/checks/ps2/parity-unchecked.ts";
import { ruleTests } from "../harness.ts";
import { classBased, interruptDriven, listens, pasted, registers, sketch } from "./hosts.ts";

// A byte from the mouse is a start bit, eight data bits, an odd parity bit and a stop bit: The PS/2 Mouse/Keyboard
// Protocol (2003), Device-to-Host; bit table of Auxiliary Device and System Timings.

const notes = "// @wire board atmega328p clock=16MHz\n// @wire ps2 clock=PD2 data=PD3 pullups=external\n";
const enable = `int main(void) {
  command(0xF4);
${listens}}
`;
const enableSketch = "void setup() { command(0xF4); }\nvoid loop() { reply(); }\n";

function changed(text: string, from: string, to: string): string {
  if (!text.includes(from)) throw new Error(`no ${from} in the snippet`);
  return text.replace(from, to);
}

const handler = (body: string): string => `${notes}#include <avr/io.h>
#include <avr/interrupt.h>
#include <stdbool.h>
#include <util/parity.h>
static volatile uint8_t bits, shift, ones, answer;
static volatile uint16_t frame;
static volatile bool answered;
ISR(INT0_vect) {
${body}}
int main(void) {
  EICRA = _BV(ISC01);
  EIMSK = _BV(INT0);
  sei();
  for (;;) {
    if (answered) {
      answered = false;
      PORTB = answer;
    }
  }
}
`;

/** A host that takes its bytes while it holds the clock low in between; its sender asks again where it has to. */
const holdingHost = (given: string): string => `${notes}template <byte PIN> struct Line {
  static void low() {
    digitalWrite(PIN, LOW);
    pinMode(PIN, OUTPUT);
  }
  static void release() { pinMode(PIN, INPUT); }
  static bool high() { return digitalRead(PIN) == HIGH; }
};
using Clock = Line<2>;
using Data = Line<3>;

static bool level(bool wanted) {
  for (byte looks = 0; looks < 200; ++looks) {
    if (Clock::high() == wanted) return true;
  }
  return false;
}
static bool fall() { return level(true) && level(false); }
static bool done(bool result) {
  Clock::low();
  Data::release();
  return result;
}
static void put(bool one) {
  if (one) Data::release();
  else Data::low();
}
static bool shiftOut(byte value) {
  bool parity = true;
  for (byte mask = 1; mask != 0; mask <<= 1) {
    const bool one = value & mask;
    if (one) parity = !parity;
    put(one);
    if (!fall()) return false;
  }
  put(parity);
  if (!fall()) return false;
  Data::release();
  return fall() && !Data::high();
}
static bool give(byte value) {
  Clock::low();
  delayMicroseconds(150);
  Data::low();
  Clock::release();
  return done(shiftOut(value));
}
static bool take(byte &value) {
  Clock::release();
  if (!fall()) return done(false);
  byte bits = 0;
  bool odd = false;
  for (byte i = 0; i < 8; ++i) {
    if (!fall()) return done(false);
    bits >>= 1;
${given}}
static bool tell(byte value) {
  byte answer;
  for (byte tries = 0; tries < 3; ++tries) {
    if (!give(value) || !take(answer)) return false;
    if (answer == 0xFA) return true;
    if (answer != 0xFE) return false;
  }
  return false;
}
void setup() { tell(0xF4); }
void loop() {
  byte value;
  if (take(value)) Serial.write(value);
}
`;

ruleTests(parityUnchecked, {
  wrong: {
    "registers, the clock of the parity bit is waited for only": {
      "main.c": changed(
        registers({}, enable),
        "    if (PIND & (1 << DATA)) {\n      value |= 0x80;\n",
        "    if (PIND & (1 << DATA)) {\n    //  ^^^^ ps2/parity-unchecked: parity\n      value |= 0x80;\n",
      ),
    },
    "a sketch": {
      "mouse.ino": changed(
        sketch({}, enableSketch),
        "    bitWrite(value, i, digitalRead(DAT));\n",
        "    bitWrite(value, i, digitalRead(DAT));\n    //                 ^^^^^^^^^^^^^^^^ ps2/parity-unchecked\n",
      ),
    },
    macros: {
      "tiny.c": changed(
        pasted({}, enable),
        "    if (IS_HIGH(DATA)) byte |= mask;\n",
        "    if (IS_HIGH(DATA)) byte |= mask;\n    //  ^^^^^^^^^^^^^ ps2/parity-unchecked\n",
      ),
    },
    "a class": {
      "mouse.ino": changed(
        classBased({}, enableSketch),
        "      value |= digitalRead(data_) << i;\n",
        "      value |= digitalRead(data_) << i;\n      //       ^^^^^^^^^^^^^^^^^^ ps2/parity-unchecked\n",
      ),
    },
    "a handler that sends as well, with parity": {
      "main.c": changed(
        interruptDriven(
          {},
          `int main(void) {\n  EICRA = _BV(ISC01);\n  sei();\n  command(0xF4);\n${listens}}\n`,
        ),
        "      answer = (answer >> 1) | ((PIND & _BV(3)) ? 0x80 : 0);\n",
        "      answer = (answer >> 1) | ((PIND & _BV(3)) ? 0x80 : 0);\n      //                         ^^^^ ps2/parity-unchecked\n",
      ),
    },
    "a lambda that sends as well, with parity, handed on where the mouse is started": {
      "mouse.ino": `${notes}volatile byte bits, shift, parity, answer;
volatile bool sending, answered;
void setup() {
  attachInterrupt(digitalPinToInterrupt(2), [] {
    if (sending) {
      if (bits < 8) {
        pinMode(3, shift & 1 ? INPUT : OUTPUT);
        if (shift & 1) parity ^= 1;
        shift >>= 1;
      } else if (bits == 8) {
        if (parity) pinMode(3, INPUT);
        else pinMode(3, OUTPUT);
      } else {
        pinMode(3, INPUT);
        sending = false;
      }
      bits++;
    } else {
      if (bits > 0 && bits < 9) answer = (answer >> 1) | (digitalRead(3) ? 0x80 : 0);
      //                                                  ^^^^^^^^^^^^^^ ps2/parity-unchecked
      if (++bits == 11) {
        bits = 0;
        answered = true;
      }
    }
  }, FALLING);
}
void loop() {
  if (answered) {
    answered = false;
    Serial.write(answer);
  }
}
`,
    },
    "all eleven bits in a word, of which eight are kept": {
      "main.c": handler(`  frame >>= 1;
  if (PIND & _BV(PD3)) {
  //  ^^^^ ps2/parity-unchecked
    frame |= 0x400;
  }
  if (++bits == 11) {
    bits = 0;
    answer = frame >> 1;
    answered = true;
  }
`),
    },
    "a function for each bit, the parity bit thrown away": {
      "mouse.ino": changed(
        changed(
          sketch({}, enableSketch),
          "  for (int i = 0; i < 8; i++) {\n    waitFall();\n    bitWrite(value, i, digitalRead(DAT));\n  }\n  waitFall();\n",
          "  for (int i = 0; i < 8; i++) {\n    bitWrite(value, i, oneBit());\n  }\n  oneBit();\n",
        ),
        "byte reply() {",
        "byte oneBit() {\n  waitFall();\n  return digitalRead(DAT);\n  //     ^^^^^^^^^^^^^^^^ ps2/parity-unchecked\n}\n\nbyte reply() {",
      ),
    },
    "a function that only gives the level: the call for the bit is told": {
      "mouse.ino": holdingHost(`    if (Data::high()) {
    //  ^^^^^^^^^^^^ ps2/parity-unchecked
      bits |= 0x80;
      odd = !odd;
    }
  }
  if (!fall()) return done(false);
  if (Data::high()) odd = !odd;
  if (!fall()) return done(false);
  const bool stop = Data::high();
  value = bits;
  return done(stop);
`),
    },
  },
  right: {
    "a byte is taken by what the sender calls for its answer": {
      "mouse.ino": holdingHost(`    if (Data::high()) {
      bits |= 0x80;
      odd = !odd;
    }
  }
  if (!fall()) return done(false);
  if (Data::high()) odd = !odd;
  if (!fall()) return done(false);
  const bool stop = Data::high();
  value = bits;
  return done(stop && odd);
`),
    },
    "ones are counted and their number is looked at": {
      "main.c": handler(`  bool bit = PIND & _BV(PD3);
  if (bits == 0) {
    ones = 0;
  } else if (bits < 9) {
    shift = shift >> 1 | (bit ? 0x80 : 0);
    ones += bit;
  } else if (bits == 9) {
    ones += bit;
  }
  if (++bits == 11) {
    bits = 0;
    if (ones & 1) {
      answer = shift;
      answered = true;
    }
  }
`),
    },
    "the library's parity function": {
      "main.c": handler(`  frame = frame >> 1 | (PIND & _BV(PD3) ? 0x400 : 0);
  if (++bits == 11) {
    bits = 0;
    shift = frame >> 1;
    if (parity_even_bit(shift) != ((frame >> 9) & 1)) {
      answer = shift;
      answered = true;
    }
  }
`),
    },
    "a flag that turns over": {
      "mouse.ino": changed(
        changed(
          sketch({}, enableSketch),
          "    bitWrite(value, i, digitalRead(DAT));\n  }\n  waitFall();\n",
          "    bool bit1 = digitalRead(DAT);\n    bitWrite(value, i, bit1);\n    if (bit1) odd = !odd;\n  }\n  waitFall();\n  if (digitalRead(DAT) != odd) value = 0xFE;\n",
        ),
        "  byte value = 0;\n",
        "  byte value = 0;\n  bool odd = true;\n",
      ),
    },
    "the main code looks at the bits that the handler kept": {
      "main.c": handler(`  frame = frame >> 1 | (PIND & _BV(PD3) ? 0x400 : 0);
  if (++bits == 11) {
    bits = 0;
    answered = true;
  }
`).replace(
        "      PORTB = answer;\n",
        "      uint16_t got = frame;\n      uint8_t sum = 0;\n      for (uint8_t i = 1; i < 10; i++) {\n        sum ^= got >> i;\n      }\n      if (sum & 1) {\n        PORTB = got >> 1;\n      }\n",
      ),
    },
    "a compiler's function": {
      "main.c": handler(`  frame = frame >> 1 | (PIND & _BV(PD3) ? 0x400 : 0);
  if (++bits == 11) {
    bits = 0;
    answered = __builtin_parity(frame & 0x3FE);
    answer = frame >> 1;
  }
`),
    },
    "a check that is not there to be read": {
      "main.c": handler(`  frame = frame >> 1 | (PIND & _BV(PD3) ? 0x400 : 0);
  if (++bits == 11) {
    bits = 0;
    answered = frame_is_good(frame);
    answer = frame >> 1;
  }
`).replace("ISR(INT0_vect)", "bool frame_is_good(uint16_t frame);\nISR(INT0_vect)"),
    },
    "a pin that is looked at now and then, and no byte": {
      "main.c": `${notes}#include <avr/io.h>
int main(void) {
  for (;;) {
    PORTB = (PIND >> PD3) & 1;
  }
}
`,
    },
    "a host that only sends": {
      "main.c": registers({}, "int main(void) {\n  mouse_send(0xF4);\n  for (;;) {\n  }\n}\n").replace(
        /uint8_t reply[\s\S]*?\n}\n\nuint8_t command[\s\S]*?\n}\n/,
        "",
      ),
    },
  },
});
