// RTS is how a PC asks who is there: it turns the line off and on again, and waits for the identification. It does so whenever a
// driver is loaded or a program looks for a mouse, not only once.
//
// The rule reports a control line that a note or edgewise.json names, and whose level no code looks at and no handler waits
// for; and an identification that is sent once after power-on, so that no later question is answered. Where RTS starts the
// chip anew (by its watchdog), or where a library may look at the pin, nothing is said. A firmware that never identifies
// itself is the matter of `serial/ident-missing`. A run shows whether each question gets its answer.

import { codesOf } from "../../facts/serial/identification.ts";
import type { ControlLine, SentRun } from "../../facts/serial/serial-facts.ts";
import { quantity } from "../../model/quantities.ts";
import { formatSources } from "../../model/sources.ts";
import { spanOf } from "../literal.ts";
import type { Rule } from "../rule.ts";
import { draftsOfRuns } from "../runs/drafts-of-runs.ts";

const sources = formatSources([
  { document: "reactosSerenum", place: "legacy probe (100 ms); probe sequence (200 ms)" },
  { document: "mousedSource", place: "probe (240 ms)" },
]);

export const controlLineIgnored: Rule = {
  id: "serial/control-line-ignored",
  title: "A PC that asks again and gets no answer",
  severity: "error",
  why: "The first program finds the mouse; after a restart of the PC, or in the next program, there is none until the adapter is unplugged.",
  wrong: {
    "ferry.ino": `// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=4 report=two-button shifter=inverting
void setup() {
  Serial.begin(1200, SERIAL_7N1);
  Serial.write('M');
}
void loop() {
  if (digitalRead(5) == LOW) {
    Serial.write(0x60);
    Serial.write((byte)0);
    Serial.write((byte)0);
    delay(100);
  }
}
`,
  },
  right: {
    "ferry.ino": `// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=4 report=two-button shifter=inverting
bool wasOn = false;
void setup() {
  Serial.begin(1200, SERIAL_7N1);
}
void loop() {
  bool on = digitalRead(4) == LOW;
  if (on && !wasOn) {
    Serial.write('M');
  }
  wasOn = on;
  if (digitalRead(5) == LOW) {
    Serial.write(0x60);
    Serial.write((byte)0);
    Serial.write((byte)0);
    delay(100);
  }
}
`,
  },
  source: formatSources(quantity("serial.reset-hold")?.sources ?? []),
  *check(facts) {
    const lines = facts.serial.controlLines;
    const identification = facts.serial.identification;
    const [line] = lines;
    if (line === undefined || identification === undefined || facts.serial.sent?.mayBeMore === true) return;
    const { answers, layout, usual, mayBeSentUnseen } = identification;
    const hellos = answers.filter((run) => codesOf(run, layout)[0] === usual[0]);
    if (hellos.length === 0 && !mayBeSentUnseen) return;
    if (lines.every(({ looked }) => looked === false)) {
      yield {
        span: spanOf(line.span),
        message: `${names(lines)} of the PC is on ${line.text}, and no code looks at it: send the identification whenever it comes on`,
        source: sources,
        related: hellos.flatMap(placesOf),
        fixes: [],
      };
      return;
    }
    if (hellos.some(({ again }) => again) || mayBeSentUnseen || facts.serial.sent?.mayStartAnew === true)
      return;
    for (const { bytes } of hellos) {
      const [first] = bytes;
      if (first === undefined) continue;
      yield {
        span: spanOf(first.span),
        message: `the identification is sent once after power-on: send it each time ${names(lines)} comes on`,
        source: sources,
        related: [{ span: spanOf(line.span), message: "the line by which the PC asks" }],
        fixes: [],
      };
    }
  },
  judge: (trials) => draftsOfRuns("serial/control-line-ignored", trials),
};

function names(lines: readonly ControlLine[]): string {
  return lines.map(({ line }) => line.toUpperCase()).join(" or ");
}

function placesOf({ bytes }: SentRun) {
  const [first] = bytes;
  return first === undefined ? [] : [{ span: spanOf(first.span), message: "sends the identification" }];
}
