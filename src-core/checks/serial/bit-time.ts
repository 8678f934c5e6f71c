// Where a program sends a byte bit by bit, the delay between two levels is the bit time: 833 us at 1200 baud. The
// instructions around the delay add a little to it, so that a delay somewhat shorter than a bit is right.
//
// The rule finds bytes that are sent on one pin, a level and a constant delay for each bit, start bit first, and
// compares every delay with the bit time of the rate that is wanted: the one that a note or edgewise.json says, 1200
// baud where they say a report layout, else the nearest rate that lines are run at. A delay may be longer by what datasheets
// recommend as the largest error of one end, and shorter by all that a receiver bears. A stop bit may be longer. A
// constant that a note calls `serial.bit-time` is compared as well.

import type { Facts } from "../../facts/facts.ts";
import type { BitBangedByte, SerialConstant, TimedBit } from "../../facts/serial/serial-facts.ts";
import { percentText, plain, timeText } from "../../figures.ts";
import type { Edit, Fix } from "../../finding.ts";
import { nearestRate } from "../../model/line-rates.ts";
import { quantity } from "../../model/quantities.ts";
import { receiverToleranceSource, recommendedErrorSources } from "../../model/receiver-tolerance.ts";
import { formatSources } from "../../model/sources.ts";
import { literalToken, replaced, spanOf } from "../literal.ts";
import type { Draft, Rule } from "../rule.ts";
import { draftsOfRuns } from "../runs/drafts-of-runs.ts";
import { recommendedTolerance, totalTolerance, wantedWords } from "./expected-rate.ts";

export const bitTime: Rule = {
  id: "serial/bit-time",
  title: "A bit that lasts too long or too short",
  severity: "error",
  why:
    "The receiver starts its clock at the start bit and looks at the middle of every bit that follows; an error of a few " +
    "per cent adds up until it looks at the wrong bit.",
  wrong: {
    "ferry.ino": `// @wire board atmega328p clock=16MHz
// @wire serial tx=8 report=two-button
const uint8_t TX = 8;
void sendByte(uint8_t value) {
  digitalWrite(TX, LOW);
  delayMicroseconds(1000);
  for (uint8_t i = 0; i < 7; i++) {
    digitalWrite(TX, value & 1);
    value >>= 1;
    delayMicroseconds(1000);
  }
  digitalWrite(TX, HIGH);
  delayMicroseconds(1000);
}
void setup() {
  pinMode(TX, OUTPUT);
}
void loop() {
  sendByte('M');
}
`,
  },
  right: {
    "ferry.ino": `// @wire board atmega328p clock=16MHz
// @wire serial tx=8 report=two-button
const uint8_t TX = 8;
void sendByte(uint8_t value) {
  digitalWrite(TX, LOW);
  delayMicroseconds(826);
  for (uint8_t i = 0; i < 7; i++) {
    digitalWrite(TX, value & 1);
    value >>= 1;
    delayMicroseconds(826);
  }
  digitalWrite(TX, HIGH);
  delayMicroseconds(826);
}
void setup() {
  pinMode(TX, OUTPUT);
}
void loop() {
  sendByte('M');
}
`,
  },
  source: formatSources([recommendedErrorSources[16], receiverToleranceSource]),
  *check(facts) {
    for (const byte of facts.serial.bitBanged) yield* wrongBits(facts, byte);
    for (const constant of facts.serial.constants) {
      const draft = wrongConstant(facts, constant);
      if (draft !== undefined) yield draft;
    }
  },
  judge: (trials) => draftsOfRuns("serial/bit-time", trials),
};

/** How long a bit should last, in microseconds, and between what bounds it may lie. */
interface Wanted {
  readonly us: number;
  readonly least: number;
  readonly most: number;
  /** "the 1200 baud ..." */
  readonly words: string;
}

function wantedFor(facts: Facts, actualBaud: number | undefined, dataBits: number): Wanted | undefined {
  const { wantedBaud } = facts.serial;
  const usual = quantity("serial.baud");
  const baud = wantedBaud?.baud ?? (actualBaud === undefined ? usual?.typical : nearestRate(actualBaud));
  if (baud === undefined) return undefined;
  const us = 1e6 / baud;
  const words =
    wantedBaud === undefined ? `${baud} baud, the nearest rate that lines are run at` : wantedWords(facts);
  const total = totalTolerance(dataBits, 16);
  const recommended = recommendedTolerance(dataBits, 16);
  return {
    us,
    least: us / (1 + total.fast / 100),
    most: us * (1 + (wantedBaud === undefined ? total.slow : recommended.slow) / 100),
    words,
  };
}

/** In shorter bits the instructions around the delay count for so much that the delay alone tells no rate. */
const SHORTEST_TELLING_US = 50;

function* wrongBits(facts: Facts, byte: BitBangedByte): Generator<Draft> {
  const [start] = byte.bits;
  const data = byte.bits.filter(({ part }) => part === "data");
  const typical = data[0] ?? start;
  if (typical === undefined) return;
  if (facts.serial.wantedBaud === undefined && typical.us < SHORTEST_TELLING_US) return;
  const wanted = wantedFor(facts, 1e6 / typical.us, data.length);
  if (wanted === undefined) return;
  const wrong = byte.bits.filter((bit) => !isRight(bit, wanted));
  for (const us of new Set(wrong.map((bit) => bit.us))) {
    const alike = wrong.filter((bit) => bit.us === us);
    const [first] = alike;
    if (first !== undefined) yield draftFor(first, wanted, alike, alike.length === byte.bits.length);
  }
}

function isRight({ part, us }: TimedBit, wanted: Wanted): boolean {
  return us >= wanted.least && (part === "stop" || us <= wanted.most);
}

/** One finding for all bits that are wrong in the same way, at the first of them. */
function draftFor(bit: TimedBit, wanted: Wanted, alike: readonly TimedBit[], areAll: boolean): Draft {
  const off = (bit.us / wanted.us - 1) * 100;
  const which = areAll ? "every bit" : bit.part === "data" ? "a data bit" : `the ${bit.part} bit`;
  const fix = fixFor(alike, wanted);
  return {
    span: spanOf(bit.span),
    message: `${which} lasts ${timeText(bit.us)}, ${percentText(off)} too ${off > 0 ? "long" : "short"} for ${wanted.words}: wait ${plain(wanted.us, 0)} us, less what the instructions around it take`,
    measured: { value: bit.us, unit: "us" },
    limit: { atLeast: Math.round(wanted.least), atMost: Math.round(wanted.most), unit: "us" },
    source: bitTime.source,
    related: [],
    fixes: fix === undefined ? [] : [fix],
  };
}

/** Where every delay is a plain number of microseconds. */
function fixFor(bits: readonly TimedBit[], wanted: Wanted): Fix | undefined {
  const text = plain(wanted.us, 0);
  const edits = new Map<string, Edit>();
  for (const { expression, us } of bits) {
    const token = expression && literalToken(expression);
    if (token === undefined || Number.parseFloat(token.text) !== us) return undefined;
    edits.set(`${token.file} ${token.start}`, replaced(token, text));
  }
  return { title: `Wait ${text} us`, edits: [...edits.values()] };
}

function wrongConstant(facts: Facts, constant: SerialConstant): Draft | undefined {
  const usualBits = 7;
  const wanted = constant.quantity === "serial.bit-time" ? wantedFor(facts, undefined, usualBits) : undefined;
  if (wanted === undefined || (constant.value >= wanted.least && constant.value <= wanted.most))
    return undefined;
  const off = (constant.value / wanted.us - 1) * 100;
  const right = plain(wanted.us, 0);
  return {
    span: spanOf(constant.span),
    message: `${constant.name} is ${timeText(constant.value)}, ${percentText(off)} too ${off > 0 ? "long" : "short"} for a bit at ${wanted.words}: ${right} us would be right`,
    measured: { value: constant.value, unit: "us" },
    limit: { atLeast: Math.round(wanted.least), atMost: Math.round(wanted.most), unit: "us" },
    source: bitTime.source,
    related: [{ span: spanOf(constant.note), message: "what the note says it is" }],
    fixes: [{ title: `Write ${right}`, edits: [replaced(constant.span, right)] }],
  };
}
