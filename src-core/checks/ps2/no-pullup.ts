// A line that nobody pulls low has to come back up by itself. That is the work of a resistor to +5 V, or of the
// chip's own pull-up, which is on while the pin is an input and its output bit is 1 (INPUT_PULLUP). Without either
// the line floats: the mouse seems dead, or it works until a hand comes near.
//
// The rule looks whether the firmware ever turns the pull-ups of both pins on. Resistors on the board are not seen
// in the code: say `pullups=external` in the ps2 note or in edgewise.json, and the rule is silent.

import type { Facts } from "../../facts/facts.ts";
import type { Line, LinePullUp, Release } from "../../facts/ps2/ps2-facts.ts";
import type { Fix, Span } from "../../finding.ts";
import { visibleRange } from "../../reader/tokens.ts";
import { replaced, spanOf } from "../literal.ts";
import type { Draft, Rule } from "../rule.ts";
import { draftsOfRuns } from "../runs/drafts-of-runs.ts";
import { pinPlaces } from "./pin-places.ts";
import { known, sourcesOf } from "./sources.ts";

const example = (mode: string): string => `// @wire board atmega328p clock=16MHz
// @wire ps2 clock=2 data=3 pullups=internal
#include <Arduino.h>

void setup() {
  pinMode(2, ${mode});
  pinMode(3, ${mode});
}

bool low;

void loop() {
  low = !digitalRead(2);
}
`;

export const noPullUp: Rule = {
  id: "ps2/no-pullup",
  title: "Nothing pulls a PS/2 line up",
  severity: "warning",
  why:
    "An input without a pull-up reads whatever is in the air while nobody drives the line. Frames get extra clocks, bytes " +
    "come out wrong, and it changes with the length of the cable.",
  wrong: { "adapter.ino": example("INPUT") },
  right: { "adapter.ino": example("INPUT_PULLUP") },
  source: sourcesOf(known("ps2.pull-up")),
  *check(facts) {
    const { pullUps, clock, data } = facts.ps2;
    if (pullUps.said === "external") return;
    const missing = (["clock", "data"] as const).filter(
      (line) => facts.ps2[line] !== undefined && lacks(pullUps[line]),
    );
    if (missing.length === 0 || clock === undefined || data === undefined) return;
    const draft = floating(facts, missing);
    if (draft !== undefined) yield draft;
  },
  judge: (trials) => draftsOfRuns("ps2/no-pullup", trials),
};

/** The firmware makes the line an input, and never with the pull-up. */
function lacks({ enabled, without }: LinePullUp): boolean {
  return !enabled && without.length > 0;
}

function floating(facts: Facts, lines: readonly Line[]): Draft | undefined {
  const { pullUps } = facts.ps2;
  const places = lines.flatMap((line) => pullUps[line].without);
  const [first] = places;
  if (first === undefined) return undefined;
  const which = lines.length === 2 ? "clock and data lines" : `${lines[0]} line`;
  const noted =
    pullUps.said === "internal"
      ? ", although the chip's pull-ups are said to be used"
      : ", and no note says that resistors do";
  const remedy =
    pullUps.said === "internal"
      ? "make the pins inputs with pull-up"
      : "turn the chip's pull-ups on, or note pullups=external";
  return {
    span: spanOf(placeOf(first)),
    message: `nothing in the code pulls the ${which} up${noted}; ${remedy}`,
    source: sourcesOf(known("ps2.pull-up")),
    related: [
      ...(pullUps.saidSpan === undefined
        ? []
        : [{ span: spanOf(pullUps.saidSpan), message: "what is said of the pull-ups" }]),
      ...pinPlaces(facts, lines),
    ],
    fixes: withPullUp(places),
  };
}

function placeOf({ span, mode }: Release): Span {
  return mode === undefined ? span : visibleRange(mode.at.first, mode.at.last);
}

/** Every INPUT that is written out becomes INPUT_PULLUP. */
function withPullUp(places: readonly Release[]): readonly Fix[] {
  const spans = new Map<string, Span>();
  for (const { mode } of places) {
    if (mode === undefined || !isInputWord(mode)) return [];
    const span = visibleRange(mode.at.first, mode.at.last);
    spans.set(`${span.file} ${span.start}`, span);
  }
  if (spans.size === 0) return [];
  return [
    {
      title: "Turn the pull-ups on",
      edits: [...spans.values()].map((span) => replaced(span, "INPUT_PULLUP")),
    },
  ];
}

function isInputWord({ at }: { readonly at: Parameters<typeof firstWord>[0] }): boolean {
  return firstWord(at) === "INPUT";
}

function firstWord(at: {
  readonly first: { readonly text: string; readonly macro: { readonly name: string } | undefined };
}): string {
  return at.first.macro?.name ?? at.first.text;
}
