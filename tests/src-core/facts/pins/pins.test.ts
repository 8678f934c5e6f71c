import { describe, expect, it } from "vitest";
import { driveOf } from "../../../../src-core/facts/pins/pin-change.ts";
import { pinOfNumber, pinOfWord, pinsOfVector, pinText } from "../../../../src-core/facts/pins/pin-names.ts";
import type { Walk } from "../../../../src-core/facts/walk/events.ts";
import { inOrder } from "../../../../src-core/facts/walk/in-order.ts";
import { chip } from "../../../../src-core/model/chips.ts";
import { walkC, walkOf, walkSketch } from "../walk/walk-text.ts";

// DDRxn and PORTxn decide: ATmega328P datasheet (7810C), Table 13-1, Port pin configurations. Writing a one to PINxn
// toggles PORTxn: section 13.2.2. Ports are 0 after reset: section 13.4.

/** What happens to a pin, in order, without steps in which it stays as it is. */
function storyOf(walk: Walk, pin: string): string[] {
  const story: string[] = [];
  for (const { events } of walk.entries) {
    for (const event of inOrder(events)) {
      if (event.kind !== "pin" || event.change.pin !== pin) continue;
      const drive = driveOf(event.change.after);
      if (story.at(-1) !== drive) story.push(drive);
    }
  }
  return story;
}

describe("port registers", () => {
  it.each([
    ["DDRD |= _BV(2);", ["low"]],
    ["PORTD |= _BV(2); DDRD |= _BV(2);", ["pulled-up", "high"]],
    ["PORTD |= 4; PORTD &= ~4;", ["pulled-up", "released"]],
    ["DDRD = 0xFF; PORTD = 0x04; DDRD = 0;", ["low", "high", "pulled-up"]],
    ["DDRD = _BV(2); PIND = _BV(2); PIND = _BV(2);", ["low", "high", "low"]],
    ["DDRD |= 4; PORTD ^= 4; PORTD ^= 4;", ["low", "high", "low"]],
    ["DDRD |= 4; PORTD = (PORTD & ~0x0C) | 0x04;", ["low", "high"]],
    ["DDRD |= 4; PORTD = PINB;", ["low", "level-unknown"]],
    ["*(volatile uint8_t *)0x2A |= 1 << 2;", ["low"]],
  ])("%s", (text, story) => {
    expect(storyOf(walkC(`int main(void) { ${text} }\n`), "PD2")).toEqual(story);
  });

  it("leaves other pins of the port out of a write to single bits", () => {
    const walk = walkC("int main(void) { PORTB = PINB; DDRB |= _BV(1); PORTB |= _BV(1); }\n");
    expect(storyOf(walk, "PB1")).toEqual(["released-unknown", "level-unknown", "high"]);
    expect(storyOf(walk, "PB2")).toEqual(["released-unknown"]);
  });

  it("knows registers by their names where the chip is not known", () => {
    const walk = walkOf({ "main.c": "int main(void) { DDRD |= 4; PORTD |= 4; for (;;) {} }\n" });
    expect(storyOf(walk, "PD2")).toEqual(["low", "high"]);
  });
});

// pinMode and digitalWrite as the sketch core's language reference has them: INPUT turns the pull-up off, INPUT_PULLUP
// on; digitalWrite on an input turns the pull-up on or off.
describe("core functions", () => {
  it.each([
    ["pinMode(2, OUTPUT);", ["low"]],
    ["digitalWrite(2, HIGH); pinMode(2, OUTPUT);", ["pulled-up", "high"]],
    ["pinMode(2, INPUT_PULLUP); pinMode(2, INPUT);", ["pulled-up", "released"]],
    ["pinMode(2, OUTPUT); digitalWrite(2, analogRead(0));", ["low", "level-unknown"]],
    ["pinMode(2, INPUT_PULLUP); DDRD |= bit(2); digitalWrite(2, LOW);", ["pulled-up", "high", "low"]],
    ["bitSet(DDRD, 2); bitSet(PORTD, 2); bitClear(DDRD, 2);", ["low", "high", "pulled-up"]],
    ["*portModeRegister(digitalPinToPort(2)) |= digitalPinToBitMask(2);", ["low"]],
  ])("%s", (text, story) => {
    expect(storyOf(walkSketch(`void setup() { ${text} }\nvoid loop() {}\n`), "PD2")).toEqual(story);
  });

  it("goes by board numbers where the chip is not known", () => {
    const walk = walkOf({
      "a.ino": "void setup() { pinMode(7, INPUT_PULLUP); }\nvoid loop() { pinMode(7, OUTPUT); }\n",
    });
    expect(storyOf(walk, "#7")).toEqual(["pulled-up", "high"]);
  });
});

// Board numbers: the pin tables of the boards with these chips (ATmega328P: D2 is PD2, A0 is PC0).
describe("names of pins", () => {
  const uno = chip("atmega328p");

  it("reads words of notes with and without a chip", () => {
    expect(pinOfWord(uno, "2")).toBe("PD2");
    expect(pinOfWord(uno, "A3")).toBe("PC3");
    expect(pinOfWord(uno, "PB5")).toBe("PB5");
    expect(pinOfWord(uno, "PE9")).toBeUndefined();
    expect(pinOfWord(undefined, "2")).toBe("#2");
    expect(pinOfWord(undefined, "PD2")).toBe("PD2");
    expect(pinOfWord(undefined, "A3")).toBeUndefined();
  });

  it("reads the numbers that pinMode is given", () => {
    expect(pinOfNumber(uno, 13)).toBe("PB5");
    expect(pinOfNumber(uno, 14)).toBe("PC0");
    expect(pinOfNumber(undefined, 14)).toBe("#14");
  });

  it("speaks of pins as people do", () => {
    expect(pinText(uno, "PD3")).toBe("PD3 (pin 3)");
    expect(pinText(uno, "PC1")).toBe("PC1 (pin A1)");
    expect(pinText(undefined, "#3")).toBe("pin 3");
  });

  // ATmega328P datasheet, Table 11-1 (vectors) and pin configuration: INT0 is PD2; PCINT2 serves port D.
  it("knows which pins a vector serves", () => {
    expect(pinsOfVector(uno, "INT0_vect")).toEqual(["PD2"]);
    expect([...pinsOfVector(uno, "PCINT2_vect")].sort()).toEqual(
      Array.from({ length: 8 }, (_, bit) => `PD${bit}`),
    );
    expect(pinsOfVector(undefined, "INT0_vect")).toEqual([]);
  });
});
