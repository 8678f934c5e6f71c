// Only some pins of a chip have an external interrupt: two on the ATmega328P, one on the ATtiny85. `attachInterrupt`
// takes the number that the core gives to the interrupt, not the number of the pin; `digitalPinToInterrupt` turns one
// into the other and gives -1 for a pin without an interrupt, which `attachInterrupt` takes without complaint.
//
// The rule knows the chip's pins: it reports a pin without an external interrupt, a pin's number in the place of an
// interrupt's, and a vector of an interrupt that the chip does not have.

import type { InterruptRequest } from "../../facts/board/interrupt-requests.ts";
import { pinText } from "../../facts/pins/pin-names.ts";
import type { Fix } from "../../finding.ts";
import type { AvrChip } from "../../model/chips/chip.ts";
import { boardPin, sketchInterruptPin, vectorNamed } from "../../model/chips.ts";
import { formatSources } from "../../model/sources.ts";
import { inserted, spanOf } from "../literal.ts";
import type { Draft, Rule } from "../rule.ts";

export const pinNoInterrupt: Rule = {
  id: "board/pin-no-interrupt",
  title: "An interrupt on a pin that has none",
  severity: "error",
  why:
    "The handler never runs, or runs for another pin: not one bit of the mouse is read, and neither compiler nor core says " +
    "why.",
  wrong: {
    "ferry.ino": `// @wire board atmega328p clock=16MHz
const uint8_t CLOCK_PIN = 4;
volatile uint8_t edges;
void clockFell() { edges++; }
void setup() {
  attachInterrupt(digitalPinToInterrupt(CLOCK_PIN), clockFell, FALLING);
}
void loop() {}
`,
  },
  right: {
    "ferry.ino": `// @wire board atmega328p clock=16MHz
const uint8_t CLOCK_PIN = 2;
volatile uint8_t edges;
void clockFell() { edges++; }
void setup() {
  attachInterrupt(digitalPinToInterrupt(CLOCK_PIN), clockFell, FALLING);
}
void loop() {}
`,
  },
  source:
    "External Interrupts in the chip's datasheet; interrupt numbers: pins_arduino.h of the AVR sketch core 1.8.7",
  *check(facts) {
    const { chip } = facts.board;
    if (chip?.kind !== "avr") return;
    for (const request of facts.board.interruptRequests) {
      const draft =
        request.kind === "vector" ? lackingVector(chip, request) : lackingInterrupt(chip, request);
      if (draft !== undefined) yield draft;
    }
  },
};

type Attached = Extract<InterruptRequest, { kind: "attached" }>;

function lackingVector(
  chip: AvrChip,
  { name, span }: Extract<InterruptRequest, { kind: "vector" }>,
): Draft | undefined {
  if (!/^(PC)?INT\d+_vect$/.test(name) || vectorNamed(chip, name) !== undefined) return undefined;
  const group = name.startsWith("PC") ? "PCINT" : "INT";
  const there = chip.vectors.flatMap(({ names }) =>
    names.filter((each) => new RegExp(`^${group}\\d+_vect$`).test(each)),
  );
  return {
    span: spanOf(span),
    message: `${chip.printedName} has no ${name}: it has ${listed(there)}`,
    source: formatSources(chip.sources),
    related: [],
    fixes: [],
  };
}

function lackingInterrupt(chip: AvrChip, request: Attached): Draft | undefined {
  const { value, by, alsoPin } = request;
  if (chip.sketchInterrupts.length === 0) return undefined;
  const pin = value === undefined ? undefined : boardPin(chip, String(value));
  if (by === "pin") {
    const which = pin === undefined ? "this pin" : pinText(chip, pin.name);
    const message = `${which} has no external interrupt on ${chip.printedName}: ${theyAre(chip)}`;
    return draftFor(chip, request, message, []);
  }
  if (value === undefined || value < 0) return undefined;
  const listens = sketchInterruptPin(chip, value);
  if (listens !== undefined && alsoPin === undefined) return undefined;
  const what =
    listens === undefined
      ? `${chip.printedName} has no interrupt number ${value}`
      : `interrupt number ${value} is that of ${pinText(chip, listens.name)}, not of pin ${value}`;
  if (pin === undefined || !chip.sketchInterrupts.includes(pin.name)) {
    return draftFor(chip, request, `${what}: ${theyAre(chip)}`, []);
  }
  const message = `${what}: write digitalPinToInterrupt(${alsoPin ?? value})`;
  return draftFor(chip, request, message, [conversionFix(request)]);
}

function draftFor(chip: AvrChip, request: Attached, message: string, fixes: readonly Fix[]): Draft {
  return { span: spanOf(request.span), message, source: formatSources(chip.sources), related: [], fixes };
}

function conversionFix({ span }: Attached): Fix {
  return {
    title: "Ask for the interrupt of the pin",
    edits: [inserted(span.file, span.start, "digitalPinToInterrupt("), inserted(span.file, span.end, ")")],
  };
}

/** "external interrupts are on PD2 (pin 2) and PD3 (pin 3)" */
function theyAre(chip: AvrChip): string {
  const pins = [...new Set(chip.sketchInterrupts)].map((name) => pinText(chip, name));
  return `external interrupts are on ${listed(pins)}`;
}

function listed(words: readonly string[]): string {
  const last = words.at(-1) ?? "none";
  return words.length < 2 ? last : `${words.slice(0, -1).join(", ")} and ${last}`;
}
