import { describe, expect, it } from "vitest";
import type { Ps2Facts } from "../../../../src-core/facts/ps2/ps2-facts.ts";
import { factsOf } from "../../checks/harness.ts";
import { classBased, interruptDriven, listens, pasted, registers, sketch } from "../../checks/ps2/hosts.ts";

const ps2Of = (text: string, name = "main.c"): Ps2Facts => factsOf({ [name]: text }).ps2;

const board = "// @wire board atmega328p clock=16MHz\n";
const enable = `int main(void) {\n  command(0xF4);\n${listens}}\n`;
const enableSketch = "void setup() { command(0xF4); }\nvoid loop() { reply(); }\n";

/** Bytes of each sequence in hexadecimal; `??` for one that is not known, `~` before one after something unknown. */
function bytesOf({ sequences }: Ps2Facts): string[] {
  return sequences.map(({ bytes }) =>
    bytes
      .map(
        ({ byte, afterUnknown }) =>
          (afterUnknown ? "~" : "") + (byte?.toString(16).toUpperCase().padStart(2, "0") ?? "??"),
      )
      .join(" "),
  );
}

describe("pins of the port", () => {
  it.each([
    ["port registers", registers({ notes: board }, enable), "main.c", "PD2", "PD3"],
    ["core functions, no chip", sketch({ notes: "" }, enableSketch), "a.ino", "#2", "#3"],
    ["macros", pasted({ notes: "/* @wire board attiny85 clock=8MHz */\n" }, enable), "main.c", "PB2", "PB0"],
    ["a class", classBased({ notes: board }, enableSketch), "a.ino", "PD2", "PD3"],
    [
      "a handler",
      interruptDriven({ notes: board }, `int main(void) { sei(); command(0xF4);\n${listens}}\n`),
      "main.c",
      "PD2",
      "PD3",
    ],
  ])("are found by the request to send: %s", (_, text, name, clock, data) => {
    const { clock: foundClock, data: foundData } = ps2Of(text, name);
    expect([foundClock?.pin, foundClock?.by, foundData?.pin, foundData?.by]).toEqual([
      clock,
      "request",
      data,
      "request",
    ]);
  });

  it("are found by the names of ports and bits, which are alike on all chips, where no chip is named", () => {
    const named = registers({ notes: "" }, enable)
      .replaceAll("_BV(2)", "_BV(PD2)")
      .replaceAll("_BV(3)", "_BV(PD3)");
    const { clock, data, holds } = ps2Of(named);
    expect([clock?.pin, data?.pin, holds.map(({ us }) => us)]).toEqual(["PD2", "PD3", [100]]);
  });

  it("are found by the interrupt whose handler reads one other pin", () => {
    const { clock, data } = ps2Of(
      `${board}void fell() { static byte n; n = n << 1 | digitalRead(7); }
void setup() { attachInterrupt(digitalPinToInterrupt(3), fell, FALLING); }
void loop() {}
`,
      "a.ino",
    );
    expect([clock?.pin, clock?.by, data?.pin]).toEqual(["PD3", "interrupt", "PD7"]);
  });

  it("are found by a pin-change interrupt with one pin enabled", () => {
    const { clock, data } = ps2Of(`${board}#include <avr/io.h>
#include <avr/interrupt.h>
static volatile uint8_t bits;
ISR(PCINT2_vect) {
  if (!(PIND & _BV(PD6))) bits = bits << 1 | ((PIND >> PD5) & 1);
}
int main(void) { PCMSK2 = _BV(PCINT22); PCICR = _BV(PCIE2); sei(); for (;;) {} }
`);
    expect([clock?.pin, data?.pin]).toEqual(["PD6", "PD5"]);
  });

  it("are as they were said, whatever the code looks like", () => {
    const { clock, data } = ps2Of(
      sketch({ notes: `${board}// @wire ps2 clock=4 data=A0\n` }, enableSketch),
      "a.ino",
    );
    expect([clock?.pin, clock?.text, clock?.by, data?.pin]).toEqual(["PD4", "PD4 (pin 4)", "said", "PC0"]);
  });

  it("are not guessed where nothing tells", () => {
    const { clock, data, notKnown } = ps2Of(
      "void setup() { pinMode(4, OUTPUT); digitalWrite(5, LOW); }\nvoid loop() {}\n",
      "a.ino",
    );
    expect([clock, data, notKnown]).toEqual([undefined, undefined, []]);
  });
});

describe("what is not known", () => {
  it("is said once: a pin whose name means nothing without a chip", () => {
    const { notKnown, clock, data } = ps2Of(
      sketch({ notes: "// @wire ps2 clock=2 data=A3\n" }, enableSketch),
      "a.ino",
    );
    expect([clock?.pin, data?.pin]).toEqual(["#2", undefined]);
    expect(notKnown.map(({ message }) => message)).toEqual([
      "which pin is the PS/2 data is not known, because the chip is not known: the data line is not checked",
    ]);
  });

  it("is said once: a hold with something of unknown length in it", () => {
    const { notKnown, holds } = ps2Of(
      registers({}, enable).replace("  _delay_us(100);\n", "  for (volatile int i = 0; i < 400; i++) { }\n"),
    );
    expect(holds.map(({ us, unknown }) => [us, unknown !== undefined])).toEqual([[0, true]]);
    expect(notKnown.length).toBe(1);
  });

  it("is said once: the pins behind a library", () => {
    const { notKnown } = ps2Of(
      "#include <PS2Mouse.h>\nPS2Mouse mouse(2, 3);\nvoid setup() { mouse.write(0xF4); }\nvoid loop() {}\n",
      "a.ino",
    );
    expect(notKnown.length).toBe(1);
    expect(notKnown[0]?.message).toContain("@wire ps2 clock=2 data=3");
  });
});

describe("holds", () => {
  it("are the shortest, jumps over a part of the delay included", () => {
    const text = registers({}, enable).replace(
      "  _delay_us(100);\n",
      "  if (PINB & 1) goto held;\n  _delay_us(40);\nheld:\n  _delay_us(60);\n",
    );
    expect(ps2Of(text).holds.map(({ us }) => us)).toEqual([60]);
  });
});

describe("senders", () => {
  it.each([
    [registers({}, enable), "main.c", "mouse_send"],
    [sketch({}, enableSketch), "a.ino", "sendByte"],
    [classBased({}, enableSketch), "a.ino", "send"],
    [interruptDriven({}, `int main(void) { sei(); command(0xF4);\n${listens}}\n`), "main.c", "start_sending"],
  ])("are known by what they do", (text, name, sender) => {
    expect(ps2Of(text, name).senders.map((each) => [each.name, each.parameter, each.by])).toEqual([
      [sender, 0, "what it does"],
    ]);
  });

  it("are taken by their name where the body is missing", () => {
    const { senders } = ps2Of(`void ps2_mouse_write(unsigned char port, unsigned char value);
int main(void) { ps2_mouse_write(1, 0xFF); ps2_mouse_write(1, 0xF4); return 0; }
`);
    expect(senders.map((each) => [each.name, each.parameter, each.by])).toEqual([
      ["ps2_mouse_write", 1, "its name"],
    ]);
  });

  it("are not taken for senders where they answer as a mouse does", () => {
    const { senders } = ps2Of(`void ps2_write(unsigned char value);
int main(void) { ps2_write(0xFA); ps2_write(0xF4); return 0; }
`);
    expect(senders).toEqual([]);
  });
});

describe("sequences", () => {
  it("takes the side that sends where the other does nothing", () => {
    const facts = ps2Of(
      registers(
        {},
        `static uint8_t ok(uint8_t byte) { return command(byte) == 0xFA; }
int main(void) {
  if (ok(0xF3) && ok(40) && ok(0xE8) && ok(3)) ok(0xF4);
${listens}}
`,
      ),
    );
    expect(bytesOf(facts)).toEqual(["F3 28 E8 03 F4"]);
  });

  it("goes on behind a function that takes one case of a switch", () => {
    const place = `static uint8_t place(uint8_t rate) {
  uint8_t at = 0;
  switch (rate) { case 100: at = 1; break; default: at = 2; }
  _delay_us(1);
  return at;
}
`;
    const main = `int main(void) {\n  place(100);\n  command(0xF4);\n${listens}}\n`;
    expect(bytesOf(ps2Of(registers({ notes: board }, place + main)))).toEqual(["F4"]);
  });

  it("keeps alternatives apart, and paths that end early", () => {
    const facts = ps2Of(
      sketch(
        {},
        `void setup() {
  command(0xFF);
  if (digitalRead(9)) { command(0xF5); return; }
  if (digitalRead(8)) command(0xE7); else command(0xE6);
  command(0xF4);
}
void loop() { reply(); }
`,
      ),
      "a.ino",
    );
    expect(bytesOf(facts).sort()).toEqual(["FF E6 F4", "FF E7 F4", "FF F5"]);
  });

  it("does not know what the first byte of a turn is where the turn before may have ended in a command", () => {
    const facts = ps2Of(
      registers(
        {},
        `int main(void) {
  uint8_t step = 0;
  for (;;) {
    if (step == 0) { command(0xF3); step = 1; }
    else if (step == 1) { command(80); step = 2; }
    else reply();
  }
}
`,
      ),
    );
    expect(bytesOf(facts).sort()).toEqual(["~50", "~F3"]);
  });

  it("has a command once that is tried several times, and all those that must all be taken", () => {
    const facts = ps2Of(
      registers(
        {},
        `static uint8_t told(uint8_t value) {
  for (uint8_t tries = 0; tries < 3; tries++) {
    if (command(value) == 0xFA) return 1;
  }
  return 0;
}
static uint8_t twice(uint8_t rate) {
  for (uint8_t i = 0; i < 2; i++) {
    if (!told(0xF3) || !told(rate)) return 0;
  }
  return 1;
}
int main(void) {
  told(0xFF);
  twice(200);
  told(0xF4);
  ${listens}}
`,
      ),
    );
    expect(bytesOf(facts)).toEqual(["FF F3 C8 F3 C8 F4"]);
  });

  const heard = `enum what { OK, AGAIN, NO };
static enum what heard(uint8_t value) {
  uint8_t r = command(value);
  return r == 0xFA ? OK : r == 0xFE ? AGAIN : NO;
}
`;
  // The mouse answers FE where it wants the byte again: EM84502 data sheet, section D i.
  it.each([
    [
      "in the condition of a loop",
      "",
      "uint8_t r = 0xFE; for (uint8_t n = 0; n < 3 && r == 0xFE; n++) r = command(value); return r == 0xFA;",
    ],
    [
      "behind the loop's turn, by what the answer stands for",
      heard,
      "enum what w; uint8_t n = 3; do w = heard(value); while (w == AGAIN && --n); return w == OK;",
    ],
    [
      "behind one test after the other",
      heard,
      "enum what w = heard(value); if (w == AGAIN) w = heard(value); if (w == AGAIN) w = heard(value); return w;",
    ],
    [
      "in all turns that do not return a zero that means success",
      "",
      "for (uint8_t n = 0; n < 3; n++) if (command(value) == 0xFA) return 0; return 1;",
    ],
  ])("has a command once that is sent again when the mouse asks for it: %s", (_, before, body) => {
    const main = `int main(void) {\n  told(0xFF);\n  told(0xF3);\n  told(40);\n  told(0xF4);\n${listens}}\n`;
    const facts = ps2Of(registers({}, `${before}static uint8_t told(uint8_t value) { ${body} }\n${main}`));
    expect(bytesOf(facts)).toEqual(["FF F3 28 F4"]);
  });

  it("has a command once whose loop looks at the answer, whoever names it", () => {
    const facts = ps2Of(
      registers(
        {},
        `int main(void) {
  uint8_t r = 0xFE;
  for (uint8_t n = 0; n < 3 && r == 0xFE; n++) r = command(0xF3);
  command(40);
  command(0xF4);
${listens}}
`,
      ),
    );
    expect(bytesOf(facts)).toEqual(["F3 28 F4"]);
  });

  it("goes on at the label that every path jumps to", () => {
    const facts = ps2Of(
      registers(
        {},
        `static uint8_t told(uint8_t value) {
  if (command(value) == 0xFA) goto good; else goto bad;
bad:
  return 0;
good:
  return 1;
}
int main(void) {
  told(0xF3);
  told(40);
  told(0xF4);
${listens}}
`,
      ),
    );
    expect(bytesOf(facts)).toEqual(["F3 28 F4"]);
  });

  it("goes on behind a function whose paths jump back", () => {
    const facts = ps2Of(
      registers(
        {},
        `static void told(uint8_t value) {
again:
  if (command(value) != 0xFA) goto again;
}
static void heard(void) {
  uint8_t n = 0;
again:
  reply();
  if (n++ < 2 || reply() != 0) goto again;
}
int main(void) {
  told(0xF3);
  told(40);
  heard();
  told(0xF4);
${listens}}
`,
      ),
    );
    expect(bytesOf(facts)).toEqual(["F3 28 F4"]);
  });

  it("says where a byte is not known, and finds polling", () => {
    const facts = ps2Of(
      classBased(
        {},
        "void setup() { command(0xF0); command(analogRead(0)); }\nvoid loop() { command(0xEB); }\n",
      ),
      "a.ino",
    );
    expect(bytesOf(facts)).toEqual(["F0 ?? EB"]);
  });
});

describe("waits after a reset", () => {
  it.each([
    ["command(0xFF); _delay_ms(20); command(0xF4);", 20],
    ["command(0xFF); reply(); reply(); command(0xF4);", undefined],
    ["command(0xFF); while (reply() != 0xAA) { } command(0xF4);", undefined],
    ["command(0xFF); for (uint8_t i = 0; i < 5; i++) { _delay_ms(150); } command(0xF4);", 750],
    ["command(0xFF); command(0xF4);", 0],
  ])("%s", (text, ms) => {
    const { resets } = ps2Of(registers({}, `int main(void) { ${text}\n${listens}}\n`));
    expect(resets.map((reset) => reset.ms)).toEqual([ms]);
  });
});
