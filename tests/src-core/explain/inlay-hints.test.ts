import { expect, test } from "vitest";
import { inlayHints } from "../../../src-core/explain/inlay-hints.ts";
import { factsOf } from "../checks/harness.ts";
import { registers } from "../checks/ps2/hosts.ts";

const notes =
  "// @wire board atmega328p clock=16MHz\n// @wire ps2 clock=PD2 data=PD3 pullups=external\n// @wire serial report=two-button\n";

/** The source with each hint behind its number, in angle brackets. */
function hinted(text: string, from = 0, to = text.length): string {
  const hints = inlayHints(factsOf({ "main.c": text }), "main.c", text, from, to);
  return [...hints]
    .reverse()
    .reduce(
      (shown, { offset, text: words }) => `${shown.slice(0, offset)}<${words}>${shown.slice(offset)}`,
      text,
    );
}

// EM84502 data sheet, section E (F3, F4, E8); ADNK-5023 design manual, p. 9 (3 is 8 counts per millimetre); ATmega328P
// datasheet, Table 19-1: 16 MHz / (16 (832 + 1)) = 1200.5 baud.
test("bytes, rates and bit times have words behind them, names have none", () => {
  const text = registers(
    { notes: `${notes}#define ENABLE 0xF4\n` },
    `int main(void) {
  UBRR0 = 832;
  UCSR0B = _BV(TXEN0);
  command(0xF3);
  command(40);
  command(0xE8);
  command(3);
  command(ENABLE);
  for (;;) reply();
}
`,
  );
  const shown = hinted(text);
  expect(shown).toContain("UBRR0 = 832<1200.5 baud>;");
  expect(shown).toContain("command(0xF3<set sample rate>);\n  command(40<40 reports per second>);");
  expect(shown).toContain(
    "command(0xE8<set resolution>);\n  command(3<8 counts per millimetre>);\n  command(ENABLE);",
  );
  expect(shown.match(/</g)?.length).toBe((text.match(/</g)?.length ?? 0) + 5);
});

// A bit at 1200 baud lasts 833.33 us, of which 830 are 0.996.
test("a delay between bits is told in bits", () => {
  const text = `${notes.replace("report", "tx=PB1 report")}#include <avr/io.h>
#include <util/delay.h>
void send(uint8_t byte) {
  PORTB &= ~_BV(PB1);
  _delay_us(830);
  for (uint8_t i = 0; i < 7; i++) {
    if (byte & 1) PORTB |= _BV(PB1); else PORTB &= ~_BV(PB1);
    byte >>= 1;
    _delay_us(830);
  }
  PORTB |= _BV(PB1);
  _delay_us(830);
}
int main(void) { DDRB |= _BV(PB1); for (;;) send(PIND); }
`;
  expect(hinted(text).match(/830<0.996 bit at 1200 baud>/g)?.length).toBe(3);
});

test("only what is asked for is told, and a helper's byte that means two things says neither", () => {
  const text = registers(
    { notes },
    "void both(uint8_t a) { command(a); command(60); }\nint main(void) { both(0xF3); both(0xF3); command(0xF4); for (;;) reply(); }\n",
  );
  const at = text.indexOf("0xF4");
  expect(hinted(text, at, at + 4)).toBe(text.replace("0xF4", "0xF4<enable reporting>"));
});
