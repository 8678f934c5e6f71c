// Clock and data are open-collector lines: everyone only ever pulls them low or lets them go, and a resistor brings
// them back up. A pin that is driven high fights with the mouse when that pulls low: the byte is lost, the current
// goes through two drivers, and in the end one of them gives up.
//
// The rule follows direction and output bits of both pins, for port registers and for pinMode and digitalWrite
// alike. A pin that is high for the instant between two statements that pull it low or let it go is left alone. What a
// macro does wherever it is used is told once, at the first of them.

import type { Facts } from "../../facts/facts.ts";
import type { DrivenHigh } from "../../facts/ps2/ps2-facts.ts";
import type { Fix } from "../../finding.ts";
import { visibleRange } from "../../reader/tokens.ts";
import { inserted, replaced, spanOf } from "../literal.ts";
import type { Draft, Rule } from "../rule.ts";
import { draftsOfRuns } from "../runs/drafts-of-runs.ts";
import { pinPlaces } from "./pin-places.ts";
import { known, sourcesOf } from "./sources.ts";

const example = (release: string): string => `// @wire board atmega328p clock=16MHz
// @wire ps2 clock=2 data=3 pullups=internal
#include <Arduino.h>

void setup() {
  pinMode(2, INPUT_PULLUP);
  pinMode(3, INPUT_PULLUP);
}

void loop() {
  digitalWrite(2, LOW); // keep the mouse quiet
  pinMode(2, OUTPUT);
  delay(1);
  ${release}
  delay(10);
}
`;

export const lineDrivenHigh: Rule = {
  id: "ps2/line-driven-high",
  title: "A PS/2 line is driven high",
  severity: "error",
  why:
    "When the mouse pulls the line low at the same time, two outputs work against each other: bits are lost, and the " +
    "port of the mouse or of the chip may be damaged. It often works on the desk, because most of the time only one side drives.",
  wrong: { "adapter.ino": example("digitalWrite(2, HIGH);") },
  right: { "adapter.ino": example("pinMode(2, INPUT_PULLUP);") },
  source: sourcesOf(known("ps2.pull-up")),
  *check(facts) {
    for (const alike of byCause(facts.ps2.drivenHigh)) yield drivenHigh(facts, alike);
  },
  judge: (trials) => draftsOfRuns("ps2/line-driven-high", trials),
};

/** One place, or all uses of the macro that has the statement, in the order of the text. */
type Alike = readonly [DrivenHigh, ...DrivenHigh[]];

function byCause(places: readonly DrivenHigh[]): Iterable<Alike> {
  const causes = new Map<string, Alike>();
  for (const [index, place] of places.toSorted(inText).entries()) {
    const key = place.macro === undefined ? `${index}` : `${place.macro.file} ${place.macro.start}`;
    const before = causes.get(key);
    causes.set(key, before === undefined ? [place] : [...before, place]);
  }
  return causes.values();
}

function inText({ span: a }: DrivenHigh, { span: b }: DrivenHigh): number {
  if (a.file !== b.file) return a.file < b.file ? -1 : 1;
  return a.start - b.start;
}

function drivenHigh(facts: Facts, [first, ...others]: Alike): Draft {
  const { line, span, macro, sometimes, way } = first;
  const when = sometimes ? " whenever this bit is 1" : "";
  const lines = new Set([first, ...others].map((each) => each.line));
  return {
    span: spanOf(span),
    message: `the ${line} line is driven high${when}; a PS/2 line is only ever pulled low or let go, by making its pin an input`,
    source: sourcesOf(known("ps2.pull-up")),
    related: [
      ...pinPlaces(facts, [...lines]),
      ...(macro === undefined ? [] : [{ span: spanOf(macro), message: "this macro drives it" }]),
      ...others.map((other) => ({
        span: spanOf(other.span),
        message: `the same drives the ${other.line} line high here`,
      })),
    ],
    fixes: sometimes || macro !== undefined ? [] : letGo(facts, line, way),
  };
}

function letGo(facts: Facts, line: DrivenHigh["line"], way: DrivenHigh["way"]): readonly Fix[] {
  const title = `Let the ${line} line go`;
  switch (way.kind) {
    case "digitalWrite": {
      const [pin, level] = way.expressions;
      if (pin === undefined || level === undefined) return [];
      const start = visibleRange(pin.at.first, pin.at.last).start;
      const mode = facts.ps2.pullUps.said === "external" ? "INPUT" : "INPUT_PULLUP";
      const name = { file: way.call.file, start: way.call.start, end: start };
      const last = visibleRange(level.at.first, level.at.last);
      if (last.file !== name.file || name.end <= name.start) return [];
      return [{ title, edits: [replaced(name, "pinMode("), replaced(last, mode)] }];
    }
    case "direction": {
      const { target, operand } = way;
      if (target.file !== operand.file || operand.start <= target.end) return [];
      const between = { file: target.file, start: target.end, end: operand.start };
      return [{ title, edits: [replaced(between, " &= ~("), inserted(operand.file, operand.end, ")")] }];
    }
    case "other":
      return [];
  }
}
