import { resetWaitShort } from "../../../../src-core/checks/ps2/reset-wait-short.ts";
import { ruleTests } from "../harness.ts";
import { classBased, interruptDriven, listens, pasted, registers, sketch } from "./hosts.ts";

// FA, then AA after the self-test: EM84502 mouse controller data sheet, section E. A host waits one second: FreeBSD
// manual psm(4), KBD_RESETDELAY and KBD_MAXWAIT; another four: Linux kernel, libps2.c. The self-test itself takes 300
// to 500 ms in a keyboard: Technical Reference, 5160, p. 4-25.

/** A byte of which the start bit is waited for `ms` times 1 ms, and each edge within it for a while. */
const nested = (giveUp: string): string => `static uint8_t falls(uint16_t n) {
  while (PIND & (1 << CLOCK)) {
${giveUp}    _delay_us(5);
  }
  return 1;
}
static uint8_t rises(uint16_t n) {
  while (!(PIND & (1 << CLOCK))) {
    if (--n == 0) return 0;
    _delay_us(3);
  }
  return 1;
}
static uint8_t take(uint16_t ms) {
  uint8_t value = 0;
  while (!falls(200)) if (--ms == 0) return 0;
  for (uint8_t i = 0; i < 10; i++) {
    if (!rises(60) || !falls(60)) return 0;
    if (i < 8) value = value >> 1 | (PIND & (1 << DATA) ? 0x80 : 0);
  }
  return value;
}
`;

/** A reply that is waited for no longer than `ms`, on millis(). */
const timed = `int replyWithin(unsigned long ms) {
  unsigned long since = millis();
  while (digitalRead(CLK)) {
    if (millis() - since > ms) return -1;
  }
  return reply();
}
`;

ruleTests(resetWaitShort, {
  wrong: {
    "a short delay before the next command": {
      "main.c": registers(
        {},
        `int main(void) {
  command(0xFF);
  _delay_ms(20);
  //        ^^ ps2/reset-wait-short: the mouse is given 20 ms for its self-test after the reset; some need longer, so wait 1 s for AA
  command(0xF4);
${listens}}
`,
      ),
    },
    "no wait at all": {
      "mouse.ino": sketch(
        {},
        `void setup() {
  command(0xFF);
  //      ^^^^ ps2/reset-wait-short: the self-test after the reset is not waited for
  command(0xF4);
}
void loop() { reply(); }
`,
      ),
    },
    "half a second by a constant": {
      "tiny.c": pasted(
        {},
        `#define SELF_TEST_MS 500
int main(void) {
  command(0xFF);
  _delay_ms(SELF_TEST_MS);
  //        ^^^^^^^^^^^^ ps2/reset-wait-short: 500 ms
  command(0xF4);
${listens}}
`,
      ),
    },
    "a time-out that counts milliseconds down": {
      "main.c": registers(
        {},
        `static volatile uint8_t queue[8], head;
static uint8_t tail;
static int take(uint16_t ms) {
  while (head == tail) {
    if (ms-- == 0) return -1;
    _delay_ms(1);
  }
  return queue[tail++ & 7];
}
int main(void) {
  do {
    command(0xFF);
  } while (take(25) != 0xFA || take(700) != 0xAA || take(25) != 0);
  //                                ^^^ ps2/reset-wait-short: 700 ms
  command(0xF4);
  _delay_ms(300);
${listens}}
`,
      ),
    },
    "a time-out on millis()": {
      "mouse.ino": sketch(
        {},
        `${timed}void setup() {
  sendByte(0xFF);
  if (replyWithin(25) != 0xFA) return;
  if (replyWithin(300) != 0xAA) return;
  //              ^^^ ps2/reset-wait-short: 300 ms
  if (replyWithin(25) != 0) return;
  command(0xF4);
}
void loop() { reply(); }
`,
      ),
    },
    "delays that do not add up": {
      "mouse.ino": classBased(
        {},
        `const uint8_t RESET = 0xFF;
void setup() {
  command(RESET);
  delay(250);
  digitalWrite(13, HIGH);
  delay(400);
  //    ^^^ ps2/reset-wait-short: 650 ms
  command(0xF4);
}
void loop() { reply(); }
`,
      ),
    },
    "a reset that is sent again where the mouse asks for it": {
      "main.c": registers(
        {},
        `static uint8_t tell(uint8_t byte) {
  uint8_t answer = command(byte);
  if (answer == 0xFE) {
    answer = command(byte);
  }
  return answer == 0xFA;
}
int main(void) {
  tell(0xFF);
  _delay_ms(300);
  //        ^^^ ps2/reset-wait-short: 300 ms
  tell(0xF4);
${listens}}
`,
      ),
    },
    "so many times a wait that gives up": {
      "main.c": registers(
        {},
        `${nested("    if (--n == 0) return 0;\n")}int main(void) {
  mouse_send(0xFF);
  if (take(60) != 0xFA || take(300) != 0xAA || take(60) != 0) return 1;
  //                           ^^^ ps2/reset-wait-short: 300 ms
  mouse_send(0xF4);
  take(60);
${listens}}
`,
      ),
    },
    "a helper that delays by the millisecond": {
      "main.c": registers(
        {},
        `static void wait_ms(uint16_t ms) {
  while (ms--) {
    _delay_ms(1);
  }
}
int main(void) {
  command(0xFF);
  wait_ms(100);
  //      ^^^ ps2/reset-wait-short: 100 ms
  command(0xF4);
${listens}}
`,
      ),
    },
    "a constant of which a note says what it is": {
      "main.c": `// @wire board atmega328p clock=16MHz
// @wire means ps2.reset-wait
static const unsigned int reset_wait = 600;
//                                     ^^^ ps2/reset-wait-short: reset_wait is 600 ms; after a reset the mouse is to be given at least 1000 ms
int main(void) {
  return reset_wait;
}
`,
    },
  },
  right: {
    "so many times a wait that gives up": {
      "main.c": registers(
        {},
        `${nested("    if (--n == 0) return 0;\n")}int main(void) {
  mouse_send(0xFF);
  if (take(60) != 0xFA || take(1500) != 0xAA || take(60) != 0) return 1;
  mouse_send(0xF4);
  take(60);
${listens}}
`,
      ),
    },
    "each fall waited for as long as it takes, and no rise": {
      "main.c": registers(
        {},
        `${nested("")}int main(void) {
  mouse_send(0xFF);
  if (take(60) != 0xFA || take(1500) != 0xAA || take(60) != 0) return 1;
  mouse_send(0xF4);
  take(60);
${listens}}
`,
      ),
    },
    "a second": {
      "main.c": registers(
        {},
        `int main(void) {\n  command(0xFF);\n  _delay_ms(1000);\n  command(0xF4);\n${listens}}\n`,
      ),
    },
    "the answers waited for as long as they take": {
      "mouse.ino": sketch(
        {},
        `void setup() {\n  command(0xFF);\n  reply();\n  reply();\n  command(0xF4);\n}\nvoid loop() { reply(); }\n`,
      ),
    },
    "until AA comes": {
      "tiny.c": pasted(
        {},
        `int main(void) {\n  command(0xFF);\n  while (reply() != 0xAA) {\n  }\n  reply();\n  command(0xF4);\n${listens}}\n`,
      ),
    },
    "flags of an interrupt handler waited for": {
      "main.c": interruptDriven(
        {},
        `int main(void) {\n  sei();\n  command(0xFF);\n  reply();\n  reply();\n  command(0xF4);\n${listens}}\n`,
      ),
    },
    "a time-out on millis() that is long enough": {
      "mouse.ino": sketch(
        {},
        `${timed}void setup() {
  sendByte(0xFF);
  if (replyWithin(30) != 0xFA) return;
  if (replyWithin(1200) != 0xAA) return;
  if (replyWithin(30) != 0) return;
  command(0xF4);
}
void loop() { reply(); }
`,
      ),
    },
    "a second in steps": {
      "mouse.ino": classBased(
        {},
        `void setup() {
  command(0xFF);
  for (int i = 0; i < 100; i++) {
    digitalWrite(13, i & 1);
    delay(10);
  }
  command(0xF4);
}
void loop() { reply(); }
`,
      ),
    },
    "two thousand milliseconds by a helper": {
      "main.c": registers(
        {},
        `static void wait_ms(uint16_t ms) {
  while (ms--) {
    _delay_ms(1);
  }
}
int main(void) {
  command(0xFF);
  wait_ms(2000);
  command(0xF4);
${listens}}
`,
      ),
    },
    "nothing is reset": {
      "mouse.ino": sketch(
        {},
        `void setup() {\n  command(0xF6);\n  command(0xF4);\n}\nvoid loop() { reply(); }\n`,
      ),
    },
    "a function that nobody knows waits": {
      "mouse.ino": sketch(
        {},
        `void waitForSelfTest();
void setup() {
  command(0xFF);
  waitForSelfTest();
  command(0xF4);
}
void loop() { reply(); }
`,
      ),
    },
    "the answer comes in the main loop": {
      "mouse.ino": sketch(
        {},
        `void setup() {
  sendByte(0xFF);
}
void loop() {
  byte value = reply();
  if (value == 0xAA) {
    reply();
    command(0xF4);
  }
}
`,
      ),
    },
    "counted tries with a delay in each": {
      "main.c": interruptDriven(
        {},
        `static uint8_t expect(uint8_t wanted, uint16_t tries) {
  while (!answered) {
    if (tries-- == 0) {
      return 0;
    }
    _delay_ms(1);
  }
  answered = 0;
  return answer == wanted;
}
int main(void) {
  sei();
  start_sending(0xFF);
  while (sending) {
  }
  if (expect(0xFA, 30) && expect(0xAA, 1500) && expect(0, 30)) {
    command(0xF4);
  }
${listens}}
`,
      ),
    },
  },
});
