// A pin can carry one line only. Two lines on one pin, or a line on RXD or TXD of a UART that is switched on, is a
// slip in a note, in edgewise.json or in the code, often one number by the board's counting and one by the chip's.
//
// The rule compares the pins that are said for the PS/2 port and the serial side with each other and with the pins
// of the UARTs and software serial ports that the code sets up; where no note says the pins of the PS/2 port, those that
// the code shows count. A UART's RXD counts only while its receiver is on, TXD
// only while its transmitter is.

import type { PinRole } from "../../facts/board/pin-roles.ts";
import type { Facts } from "../../facts/facts.ts";
import { pinText } from "../../facts/pins/pin-names.ts";
import { spanOf } from "../literal.ts";
import type { Draft, Rule } from "../rule.ts";

export const pinConflict: Rule = {
  id: "board/pin-conflict",
  title: "Two lines on one pin",
  severity: "error",
  why:
    "While a UART's transmitter is on, the pin is its own whatever the program writes to the port. And what drives one of " +
    "two lines on a pin drives the other as well, so that neither works.",
  wrong: {
    "ferry.ino": `// @wire board atmega328p clock=16MHz
// @wire ps2 clock=2 data=1 pullups=internal
// @wire serial uart=0 report=two-button
void setup() {
  Serial.begin(1200, SERIAL_7N1);
}
void loop() {
  Serial.write('M');
}
`,
  },
  right: {
    "ferry.ino": `// @wire board atmega328p clock=16MHz
// @wire ps2 clock=2 data=3 pullups=internal
// @wire serial uart=0 report=two-button
void setup() {
  Serial.begin(1200, SERIAL_7N1);
}
void loop() {
  Serial.write('M');
}
`,
  },
  source: "Alternate Port Functions in the chip's datasheet",
  *check(facts) {
    const first = new Map<string, PinRole>();
    for (const role of [...facts.board.pinRoles, ...seenRoles(facts)]) {
      const held = first.get(role.pin);
      if (held === undefined) first.set(role.pin, role);
      else if (held.line !== role.line) yield conflict(facts, held, role);
    }
  },
};

/** Pins of the PS/2 port that no note says, but the code shows. */
function seenRoles({ ps2 }: Facts): readonly PinRole[] {
  const seen = (pin: Facts["ps2"]["clock"], line: "clock" | "data", role: string): PinRole[] =>
    pin === undefined || pin.by === "said" ? [] : [{ pin: pin.pin, role, span: pin.span, said: false, line }];
  return [...seen(ps2.clock, "clock", "the PS/2 clock"), ...seen(ps2.data, "data", "the PS/2 data line")];
}

/** Reported where a note or edgewise.json says it, the later of two. */
function conflict(facts: Facts, held: PinRole, role: PinRole): Draft {
  const [wrong, other] = role.said ? [role, held] : [held, role];
  return {
    span: spanOf(wrong.span),
    message: `${pinText(facts.board.chip, wrong.pin)} is already ${other.role}: give ${wrong.role} a pin of its own`,
    source: pinConflict.source,
    related: [{ span: spanOf(other.span), message: `${other.role} is set up here` }],
    fixes: [],
  };
}
