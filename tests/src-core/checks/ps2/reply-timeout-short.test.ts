import { replyTimeoutShort } from "../../../../src-core/checks/ps2/reply-timeout-short.ts";
import { ruleTests } from "../harness.ts";
import { classBased, interruptDriven, listens, registers, sketch } from "./hosts.ts";

// A mouse answers within 25 ms: EM84502 data sheet, section D vi; SC84512 data sheet, p. 7. Another text has 20 ms.

function changed(text: string, from: string, to: string): string {
  if (!text.includes(from)) throw new Error(`no ${from} in the snippet`);
  return text.replace(from, to);
}

const enableSketch = "void setup() { command(0xF4); }\nvoid loop() { reply(); }\n";

/** The sketch whose waits for an edge end after a time. */
const timed = (limit: string, carets = "", rest = enableSketch): string =>
  changed(
    sketch({}, rest),
    "void waitFall() {\n  while (digitalRead(CLK) == LOW) ;\n  while (digitalRead(CLK) == HIGH) ;\n}\n",
    `bool waitFall() {
  unsigned long since = millis();
  while (digitalRead(CLK) == LOW) {
    if (millis() - since > 30) return false;
  }
  while (digitalRead(CLK) == HIGH) {
    if (${limit}) return false;
${carets}  }
  return true;
}
`,
  ).replace(
    "    if (millis() - since > 30) return false;\n",
    limit.includes("micros")
      ? "    if (micros() - since > 100) return false;\n"
      : "    if (millis() - since > 1) return false;\n",
  );

const handled = (wait: string): string =>
  changed(
    interruptDriven({}, `int main(void) {\n  EICRA = _BV(ISC01);\n  sei();\n  command(0xF4);\n${listens}}\n`),
    "  while (!answered) {\n  }\n",
    wait,
  ).replace(
    "  while (sending) {\n  }\n",
    "  for (uint8_t ms = 0; sending && ms < 20; ms++) {\n    _delay_ms(1);\n  }\n",
  );

/** Port registers whose start bit is waited for by `first(count)`, in looks of 5 us. */
const nested = (count: string, first: string, carets = ""): string =>
  changed(
    changed(
      registers({}, `int main(void) {\n  command(0xF4);\n${listens}}\n`),
      "static void clock_falls(void) {\n  loop_until_bit_is_set(PIND, CLOCK);\n  loop_until_bit_is_clear(PIND, CLOCK);\n}\n",
      `volatile uint8_t patience;
static uint8_t until(uint8_t low, uint16_t n) {
  while (!(PIND & (1 << CLOCK)) != low) {
    if (--n == 0) return 0;
    _delay_us(5);
  }
  return 1;
}
static uint8_t clock_falls(void) { return until(0, 60) && until(1, 60); }
static uint8_t first(uint16_t ms) {
${first}
}
`,
    ),
    "  uint8_t value = 0;\n  clock_falls();\n",
    `  uint8_t value = 0;\n  first(${count});\n${carets}`,
  );

const called = "  while (!until(1, 200)) if (--ms == 0) return 0;\n  return 1;";
const jumping = `  for (;;) {
    for (uint8_t i = 0; i < 200; i++) {
      if (!(PIND & (1 << CLOCK))) goto started;
      _delay_us(5);
    }
    if (--ms == 0) return 0;
  }
started:
  return 1;`;

ruleTests(replyTimeoutShort, {
  wrong: {
    "so many times a wait that gives up": {
      "main.c": nested("15", called, "  //    ^^ ps2/reply-timeout-short: 15 ms\n"),
    },
    "so many times a loop of looks": {
      "main.c": nested("15", jumping, "  //    ^^ ps2/reply-timeout-short: 15 ms\n"),
    },
    "a time on millis()": {
      "mouse.ino": timed(
        "millis() - since > 10",
        "    //                     ^^ ps2/reply-timeout-short: 10 ms\n",
      ),
    },
    "a time on micros()": {
      "mouse.ino": timed(
        "micros() - since > 24000",
        "    //                     ^^^^^ ps2/reply-timeout-short: 24 ms\n",
      ).replace("unsigned long since = millis();", "unsigned long since = micros();"),
    },
    "looks with a delay between them": {
      "main.c": handled(`  for (uint8_t ms = 0; ms < 15; ms++) {
  //                        ^^ ps2/reply-timeout-short: 15 ms
    if (answered) {
      break;
    }
    _delay_ms(1);
  }
`),
    },
    "looks of 100 us": {
      "main.c": handled(`  for (uint16_t n = 0; n < 200; n++) {
  //                       ^^^ ps2/reply-timeout-short: 20 ms
    if (answered) {
      break;
    }
    _delay_us(100);
  }
`),
    },
    "a class, the time given by the caller": {
      "mouse.ino": changed(
        changed(
          classBased({}, enableSketch),
          "  void fall() {\n    while (!digitalRead(clock_)) {}\n    while (digitalRead(clock_)) {}\n  }\n",
          "  bool fall() { return until(LOW, 12); }\n  //                              ^^ ps2/reply-timeout-short: 12 ms\n  bool until(uint8_t level, uint16_t ms) {\n    unsigned long since = millis();\n    while (digitalRead(clock_) != level) {\n      if (millis() - since > ms) return false;\n    }\n    return true;\n  }\n",
        ),
        "#include <Arduino.h>\n",
        "#include <Arduino.h>\n",
      ),
    },
  },
  right: {
    "so many times a wait that gives up": { "main.c": nested("60", called) },
    "so many times a loop of looks": { "main.c": nested("60", jumping) },
    "nobody knows how many times a wait that gives up": { "main.c": nested("patience", called) },
    "nobody knows how many times a loop of looks": { "main.c": nested("patience", jumping) },
    "delays so short that the looks between them take as long": { "main.c": nested("22", called) },
    "25 ms": { "mouse.ino": timed("millis() - since > 25") },
    "25000 us": {
      "mouse.ino": timed("micros() - since > 25000").replace(
        "unsigned long since = millis();",
        "unsigned long since = micros();",
      ),
    },
    "looks with a delay between them": {
      "main.c": handled(
        "  for (uint8_t ms = 0; ms < 30; ms++) {\n    if (answered) {\n      break;\n    }\n    _delay_ms(1);\n  }\n",
      ),
    },
    "a delay in front adds up": {
      "main.c": handled(
        "  _delay_ms(20);\n  for (uint8_t ms = 0; ms < 10; ms++) {\n    if (answered) {\n      break;\n    }\n    _delay_ms(1);\n  }\n",
      ),
    },
    "for ever": {
      "main.c": registers({}, `int main(void) {\n  command(0xF4);\n${listens}}\n`),
    },
    "looks whose time is not known": {
      "main.c": handled("  for (uint16_t n = 0; n < 2000 && !answered; n++) {\n  }\n"),
    },
  },
});
