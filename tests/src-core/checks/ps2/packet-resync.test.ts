import { packetResync } from "../../../../src-core/checks/ps2/packet-resync.ts";
import { ruleTests } from "../harness.ts";

// Bit 3 of the first byte of a report is 1; a partial report is dropped after half a second of silence: Linux kernel,
// psmouse-base.c, packet decode; first byte: PAW3402 data sheet, 6.1.

const notes = "// @wire board atmega328p clock=16MHz\n// @wire ps2 clock=PD2 data=PD3 pullups=external\n";
/** The handler keeps whole bytes in a ring; `take` gives the next. */
const port = `${notes}#include <avr/io.h>
#include <avr/interrupt.h>
#include <stdbool.h>
static volatile uint8_t bits, shift, ring[16], head;
static uint8_t tail;
ISR(INT0_vect) {
  shift = shift >> 1 | (PIND & _BV(PD3) ? 0x80 : 0);
  if (++bits == 11) {
    bits = 0;
    ring[head] = shift;
    head = (head + 1) % 16;
  }
}
static bool take(uint8_t *value) {
  if (head == tail) return false;
  *value = ring[tail];
  tail = (tail + 1) % 16;
  return true;
}
static void show(uint8_t x, uint8_t y, uint8_t buttons) {
  PORTB = (buttons & 1) | (x & 0xC0) >> 6;
  PORTC = y;
}
`;
const start = "  EICRA = _BV(ISC01);\n  EIMSK = _BV(INT0);\n  sei();\n";
const collected = (before: string, store: string, extra = ""): string => `${port}
static uint8_t packet[3], length;
${extra}
static void serve(void) {
  uint8_t value;
${before}  while (take(&value)) {
${store}    if (length == 3) {
      length = 0;
      show(packet[1], packet[2], packet[0]);
    }
  }
}
int main(void) {
${start}  for (;;) {
    serve();
  }
}
`;
const sketch = (check: string, store: string): string => `// @wire ps2 clock=2 data=3 pullups=external
volatile byte bits, shift, received;
volatile bool complete;
void fell() {
  shift = shift >> 1 | (digitalRead(3) ? 0x80 : 0);
  if (++bits == 11) { bits = 0; received = shift; complete = true; }
}
byte report[4];
byte count = 0;
unsigned long lastByte;
void setup() {
  Serial.begin(1200, SERIAL_7N1);
  attachInterrupt(digitalPinToInterrupt(2), fell, FALLING);
}
void loop() {
  if (!complete) return;
  complete = false;
${check}${store}
  if (count >= 4) {
    count = 0;
    Serial.write(report[0]);
  }
}
`;

/** Which byte comes next is a state; `of` has a line in front of and behind what each state does. */
const states = (of: {
  first?: string;
  second?: string;
  others?: string;
  elsewhere?: string;
}): string => `${port}
enum next { FIRST, ACROSS, UPWARDS };
static enum next next;
static uint8_t head_byte, across;
${of.others ?? ""}static void feed(uint8_t byte) {
  switch (next) {
    case FIRST:
${of.first ?? ""}      head_byte = byte;
      next = ACROSS;
      break;
    case ACROSS:
${of.second ?? ""}      across = byte;
      next = UPWARDS;
      break;
    case UPWARDS:
      show(across, byte, head_byte);
      next = FIRST;
      break;
    default:
      next = FIRST;
  }
}
int main(void) {
  uint8_t byte;
  next = FIRST;
${start}  for (;;) {
    if (take(&byte)) feed(byte);
${of.elsewhere ?? ""}  }
}
`;

ruleTests(packetResync, {
  wrong: {
    "a state for each byte": {
      "main.c": states({}).replace(
        "head_byte = byte;\n",
        "head_byte = byte;\n    //^^^^^^^^^^^^^^^^ ps2/packet-resync: bit 3\n",
      ),
    },
    "states by number, one after the other, and a wheel": {
      "mouse.ino": sketch(
        "",
        `  static byte state = 0;
  static byte head, x, y;
  if (state == 0) {
    head = received;
  //^^^^^^^^^^^^^^^ ps2/packet-resync
    state++;
  } else if (state == 1) {
    x = received;
    state++;
  } else if (state == 2) {
    y = received;
    state++;
  } else {
    state = 0;
    Serial.write(head ^ x ^ y ^ received);
  }
`,
      ),
    },
    "states of a class, in the handler, after those in which the mouse is set up": {
      "mouse.ino": `// @wire ps2 clock=2 data=3 pullups=external
class Mouse {
public:
  void fell() {
    shift_ = shift_ >> 1 | (digitalRead(3) ? 0x80 : 0);
    if (++bits_ < 11) return;
    bits_ = 0;
    take(shift_);
  }
  volatile byte report_[3];
private:
  enum class State : byte { Passed, Id, Buttons, X, Y };
  void take(byte value) {
    switch (state_) {
      case State::Passed: if (value == 0xAA) state_ = State::Id; break;
      case State::Id: state_ = State::Buttons; break;
      case State::Buttons: report_[0] = value; state_ = State::X; break;
                         //^^^^^^^^^^^^^^^^^^ ps2/packet-resync
      case State::X: report_[1] = value; state_ = State::Y; break;
      case State::Y: report_[2] = value; state_ = State::Buttons; break;
    }
  }
  volatile byte bits_, shift_;
  State state_ = State::Passed;
};
Mouse mouse;
void fell() { mouse.fell(); }
void setup() { attachInterrupt(digitalPinToInterrupt(2), fell, FALLING); }
void loop() { Serial.write(mouse.report_[0]); }
`,
    },
    "a wheel's byte that only some mice send": {
      "main.c": states({})
        .replace("UPWARDS };", "UPWARDS, WHEEL };\nstatic uint8_t has_wheel;")
        .replace("head_byte = byte;\n", "head_byte = byte;\n    //^^^^^^^^^^^^^^^^ ps2/packet-resync\n")
        .replace(
          "      next = FIRST;\n      break;\n    default:",
          "      next = has_wheel ? WHEEL : FIRST;\n      break;\n    case WHEEL:\n      PORTD = byte;\n      next = FIRST;\n      break;\n    default:",
        ),
    },
    "collected by a function that is handed each byte": {
      "main.c": `${port}
static uint8_t packet[3], length;
static void add(uint8_t byte) {
  packet[length++] = byte;
//^^^^^^^^^^^^^^^^ ps2/packet-resync
  if (length < 3) return;
  length = 0;
  show(packet[1], packet[2], packet[0]);
}
int main(void) {
${start}  for (;;) {
    uint8_t byte;
    if (take(&byte)) add(byte);
  }
}
`,
    },
    "a counter at file level": {
      "main.c": collected(
        "",
        "    packet[length++] = value;\n  //^^^^^^^^^^^^^^^^ ps2/packet-resync: bit 3\n",
      ),
    },
    "a sketch, four bytes": {
      "mouse.ino": sketch("", "  report[count++] = received;\n//^^^^^^^^^^^^^^^ ps2/packet-resync\n"),
    },
    "written through a pointer, the counter in main": {
      "main.c": `${port}
int main(void) {
  uint8_t packet[3], got = 0;
${start}  for (;;) {
    if (!take(&packet[got])) continue;
    //        ^^^^^^^^^^^^ ps2/packet-resync
    if (++got == 3) {
      got = 0;
      show(packet[1], packet[2], packet[0]);
    }
  }
}
`,
    },
    "collected by the handler": {
      "main.c": `${notes}#include <avr/io.h>
#include <avr/interrupt.h>
static volatile uint8_t bits, shift, packet[3], at, ready;
ISR(INT0_vect) {
  shift = shift >> 1 | (PIND & _BV(PD3) ? 0x80 : 0);
  if (++bits < 11) return;
  bits = 0;
  packet[at] = shift;
//^^^^^^^^^^ ps2/packet-resync
  at++;
  if (at == 3) {
    at = 0;
    ready = 1;
  }
}
int main(void) {
${start}  for (;;) {
    if (ready) {
      ready = 0;
      PORTB = packet[0];
    }
  }
}
`,
    },
    "members of a class": {
      "mouse.ino": `// @wire ps2 clock=2 data=3 pullups=external
class Mouse {
public:
  void fell() {
    shift_ = shift_ >> 1 | (digitalRead(3) ? 0x80 : 0);
    if (++bits_ == 11) { bits_ = 0; byte_ = shift_; complete_ = true; }
  }
  bool poll() {
    if (!complete_) return false;
    complete_ = false;
    packet_[index_++] = byte_;
  //^^^^^^^^^^^^^^^^^ ps2/packet-resync
    if (index_ < 3) return false;
    index_ = 0;
    return true;
  }
  uint8_t packet_[3];
private:
  volatile uint8_t bits_, shift_, byte_;
  volatile bool complete_;
  uint8_t index_ = 0;
};
Mouse mouse;
void fell() { mouse.fell(); }
void setup() { attachInterrupt(digitalPinToInterrupt(2), fell, FALLING); }
void loop() { if (mouse.poll()) Serial.write(mouse.packet_[0]); }
`,
    },
  },
  right: {
    "a state for each byte, the first one looked at": {
      "main.c": states({ first: "      if (!(byte & 0x08)) return;\n" }),
    },
    "a state that goes back where the byte is not what it should be": {
      "main.c": states({
        second: "      if (byte == 0xAA) {\n        next = FIRST;\n        break;\n      }\n",
      }),
    },
    "states that begin anew after a silence": {
      "main.c": states({ elsewhere: "    if (TIFR1 & _BV(TOV1)) next = FIRST;\n" }),
    },
    "states that a timer puts back": {
      "main.c": states({ others: "ISR(TIMER1_OVF_vect) {\n  next = FIRST;\n}\n" }),
    },
    "states of what the PC says": {
      "main.c": states({ elsewhere: "    PORTB = ring[0];\n" })
        .replace("if (take(&byte))", "if (UCSR0A & _BV(RXC0))")
        .replace("feed(byte)", "feed(UDR0)"),
    },
    "states in which the firmware waits for answers": {
      "main.c": `${port}
static enum { RESET, TEST, ID, READY } state;
static uint8_t test, id;
int main(void) {
  uint8_t byte;
${start}  for (;;) {
    if (!take(&byte)) continue;
    switch (state) {
      case RESET: PORTB = byte; state = TEST; break;
      case TEST: test = byte; state = ID; break;
      case ID: id = byte; state = READY; break;
      case READY: show(test, id, byte); break;
    }
  }
}
`,
    },
    "a counter that the main loop starts again": {
      "main.c": `${notes}#include <avr/io.h>
#include <avr/interrupt.h>
static volatile uint8_t bits, shift, packet[3], at, ready;
ISR(INT0_vect) {
  shift = shift >> 1 | (PIND & _BV(PD3) ? 0x80 : 0);
  if (++bits < 11) return;
  bits = 0;
  packet[at] = shift;
  at++;
  if (at == 3) {
    at = 0;
    ready = 1;
  }
}
int main(void) {
  at = 0;
${start}  for (;;) {
    if (TIFR1 & _BV(TOV1)) at = 0;
    if (ready) {
      ready = 0;
      PORTB = packet[0];
    }
  }
}
`,
    },
    "bit 3 is looked at": {
      "main.c": collected(
        "",
        "    if (length == 0 && !(value & 0x08)) continue;\n    packet[length++] = value;\n",
      ),
    },
    "bit 3 of a whole report": {
      "main.c": collected("", "    packet[length++] = value;\n").replace(
        "      show(packet[1]",
        "      if (packet[0] & _BV(3)) show(packet[1]",
      ),
    },
    "the overflow bits": {
      "mouse.ino": sketch(
        "  if (count == 0 && (received & 0xC0) != 0) return;\n",
        "  report[count++] = received;\n",
      ),
    },
    "bit 3 by the core's macro": {
      "mouse.ino": sketch(
        "  if (count == 0 && !bitRead(received, 3)) return;\n",
        "  report[count++] = received;\n",
      ),
    },
    "a gap": {
      "mouse.ino": sketch(
        "  if (millis() - lastByte > 20) count = 0;\n  lastByte = millis();\n",
        "  report[count++] = received;\n",
      ),
    },
    "a timer drops what is left": {
      "main.c": collected(
        "",
        "    packet[length++] = value;\n",
        "ISR(TIMER1_OVF_vect) {\n  length = 0;\n}\n",
      ),
    },
    "bytes of the PC are collected": {
      "main.c": `${port}
static uint8_t wish[3], length;
static void serve_pc(void) {
  if (!(UCSR0A & _BV(RXC0))) return;
  wish[length++] = UDR0;
  if (length == 3) length = 0;
}
int main(void) {
${start}  for (;;) {
    serve_pc();
  }
}
`,
    },
    "three readings, begun anew each time": {
      "main.c": `${port}
int main(void) {
  uint8_t packet[3];
${start}  for (;;) {
    for (uint8_t i = 0; i < 3; i++) {
      while (!take(&packet[i])) {
      }
    }
    show(packet[1], packet[2], packet[0]);
  }
}
`,
    },
  },
});
