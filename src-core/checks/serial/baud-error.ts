// A serial line works while both ends agree on how long a bit is. The PC's UART makes its rate from a crystal, the
// adapter's from its clock and an integer divisor, so the adapter's is a little off; what a receiver can bear depends
// on how many bits it has to read before the stop bit lets it start afresh.
//
// The rule computes the rate that the firmware really makes from clock, divisor and speed bit, or that the sketch
// core computes for `begin`, and compares it with the rate that is wanted: the one that a note or edgewise.json says;
// else 1200 baud where the report layout is said; else the rate that the divisor was computed from (`BAUD`). Where
// nothing tells what is wanted, only a rate that fits no line at all is reported.

import type { Facts } from "../../facts/facts.ts";
import type { SerialConstant, SetUp } from "../../facts/serial/serial-facts.ts";
import { baudText, clockText, percentText, plain } from "../../figures.ts";
import type { Fix } from "../../finding.ts";
import { type BaudGenerator, baudGeneratorNamed } from "../../model/baud-generators.ts";
import { avrClassic } from "../../model/divisors/avr-classic.ts";
import { errorPercent } from "../../model/divisors/baud-generator.ts";
import { quantity } from "../../model/quantities.ts";
import { receiverToleranceSource, recommendedErrorSources } from "../../model/receiver-tolerance.ts";
import { formatSource } from "../../model/sources.ts";
import { literalToken, replaced, spanOf } from "../literal.ts";
import type { Draft, Rule } from "../rule.ts";
import { isSpoilt } from "../spoilt.ts";
import {
  actualRates,
  type Expected,
  expectedRate,
  isNear,
  recommendedTolerance,
  samplingOf,
  wantedWords,
} from "./expected-rate.ts";
import { portKey } from "./ports.ts";

export const baudError: Rule = {
  id: "serial/baud-error",
  title: "A line rate that the PC cannot read",
  severity: "error",
  why:
    `A PC listens to a serial mouse at ${quantity("serial.baud")?.typical} baud. If the adapter sends a few per cent ` +
    "faster or slower, the last bits of every byte are read in the wrong place; at twice or half the rate nothing is " +
    "read at all, and the mouse is not found.",
  wrong: {
    "main.c": `// @wire board atmega328p clock=16MHz
// @wire serial uart=0 report=two-button
#include <avr/io.h>
int main(void) {
  UBRR0 = 416; /* right for 8 MHz */
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01);
  for (;;) {
    UDR0 = 'M';
  }
}
`,
  },
  right: {
    "main.c": `// @wire board atmega328p clock=16MHz
// @wire serial uart=0 report=two-button
#include <avr/io.h>
int main(void) {
  UBRR0 = 832;
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01);
  for (;;) {
    UDR0 = 'M';
  }
}
`,
  },
  source: `${formatSource(recommendedErrorSources[16])}; ${formatSource(recommendedErrorSources[8])}`,
  *check(facts) {
    const served = new Set(
      facts.serial.setUps.filter((setUp) => isRight(facts, setUp)).map(({ port }) => portKey(port)),
    );
    for (const setUp of facts.serial.setUps) {
      if (served.has(portKey(setUp.port))) continue;
      const draft = wrongRate(facts, setUp);
      if (draft !== undefined) yield draft;
    }
    for (const constant of facts.serial.constants) yield* wrongConstant(facts, constant);
  },
};

function isRight(facts: Facts, setUp: SetUp): boolean {
  const rates = actualRates(setUp, facts.board.clock?.hz);
  return rates.some((rate) => {
    const expected = expectedRate(facts, setUp, rate);
    return expected !== undefined && isNear(rate, expected);
  });
}

function wrongRate(facts: Facts, setUp: SetUp): Draft | undefined {
  if (isCut(setUp) || isSpoilt(facts, setUp.span)) return undefined;
  const [actual] = actualRates(setUp, facts.board.clock?.hz);
  const expected = actual === undefined ? undefined : expectedRate(facts, setUp, actual);
  if (actual === undefined || expected === undefined || isNear(actual, expected)) return undefined;
  const clockHz = facts.board.clock?.hz;
  const error = errorPercent(actual, expected.baud);
  const { fix, remedy } = remedyFor(setUp, expected, clockHz);
  const wanted = facts.serial.mouseSetUps.includes(setUp) ? facts.serial.wantedBaud : undefined;
  return {
    span: spanOf(setUp.span),
    message: `${subject(setUp, actual, clockHz)}, ${percentText(error)} too ${error > 0 ? "fast" : "slow"} for ${expected.words}${remedy}`,
    measured: { value: rounded(error), unit: "%" },
    limit: { atLeast: -rounded(expected.slow), atMost: rounded(expected.fast), unit: "%" },
    source: formatSource(
      expected.slow === expected.fast ? recommendedErrorSources[16] : receiverToleranceSource,
    ),
    related: wanted === undefined ? [] : [{ span: spanOf(wanted.span), message: "what is wanted" }],
    fixes: fix === undefined ? [] : [fix],
  };
}

function isCut({ rate }: SetUp): boolean {
  return rate.kind === "divisor" && rate.intended !== rate.held;
}

function rounded(percent: number): number {
  return Number(percent.toFixed(2));
}

function subject({ rate }: SetUp, actual: number, clockHz: number | undefined): string {
  const clock = clockHz === undefined ? "" : ` at ${clockText(clockHz)}`;
  if (rate.kind === "divisor") {
    const speed = rate.samples === 8 ? " with U2X" : "";
    return `divisor ${rate.held}${speed} makes ${baudText(actual)} baud${clock}`;
  }
  const asked = rate.kind === "baud" ? rate.baud : actual;
  if (Math.abs(errorPercent(actual, asked)) < 1) return `this sends at ${baudText(asked)} baud`;
  return `the core makes ${baudText(actual)} baud of this${clock}`;
}

interface Remedy {
  /** Ends the message. */
  readonly remedy: string;
  readonly fix: Fix | undefined;
}

function remedyFor(setUp: SetUp, expected: Expected, clockHz: number | undefined): Remedy {
  const { rate } = setUp;
  if (rate.kind !== "divisor") {
    if (rate.kind === "baud" && rate.baud !== expected.baud) {
      return {
        remedy: `: begin with ${expected.baud}`,
        fix: {
          title: `Begin with ${expected.baud} baud`,
          edits: [replaced(setUp.span, String(expected.baud))],
        },
      };
    }
    return { remedy: "; another clock would be right", fix: undefined };
  }
  if (clockHz === undefined) return { remedy: "", fix: undefined };
  const same = avrClassic.nearest(clockHz, expected.baud, samplingOf(rate.samples ?? 16));
  if (same.kind === "setting" && isNear(same.actualBaud, expected)) {
    const { value } = same.setting;
    const remedy = `: ${value} makes ${baudText(same.actualBaud)}`;
    return { remedy, fix: divisorFix(setUp, value) };
  }
  const other = avrClassic.nearest(clockHz, expected.baud);
  if (other.kind === "setting" && isNear(other.actualBaud, expected)) {
    const speed = other.setting.sampling === "U2X=1" ? "with U2X set" : "with U2X clear";
    return {
      remedy: `: ${other.setting.value} ${speed} makes ${baudText(other.actualBaud)}`,
      fix: undefined,
    };
  }
  return { remedy: "; no divisor comes near enough at this clock", fix: undefined };
}

/** Where one number, or one expression, stands for the whole divisor. */
function divisorFix(setUp: SetUp, value: number): Fix | undefined {
  const { expression } = setUp;
  const token = expression && literalToken(expression);
  const title = `Write divisor ${value}`;
  if (token !== undefined) return { title, edits: [replaced(token, String(value))] };
  if (setUp.rate.kind !== "divisor" || setUp.rate.written !== "whole") return undefined;
  return { title, edits: [replaced(setUp.span, String(value))] };
}

/** A constant that a note calls a rate or a divisor. */
function* wrongConstant(facts: Facts, constant: SerialConstant): Generator<Draft> {
  const baud = facts.serial.wantedBaud?.baud ?? quantity("serial.baud")?.typical;
  if (baud === undefined || isSpoilt(facts, constant.span)) return;
  const words =
    facts.serial.wantedBaud === undefined
      ? `${baud} baud, at which a PC listens to a serial mouse`
      : wantedWords(facts);
  if (constant.quantity === "serial.baud" && constant.value !== baud) {
    yield {
      span: spanOf(constant.span),
      message: `${constant.name} is ${plain(constant.value, 3)} baud: it has to be ${words}`,
      measured: { value: constant.value, unit: "baud" },
      limit: { atLeast: baud, atMost: baud, unit: "baud" },
      related: [{ span: spanOf(constant.note), message: "what the note says it is" }],
      fixes: [{ title: `Write ${baud}`, edits: [replaced(constant.span, String(baud))] }],
    };
  }
  if (constant.quantity !== "serial.divisor") return;
  const clockHz = facts.board.clock?.hz;
  const generators = (facts.board.chip?.baudGenerators ?? []).flatMap((id) => baudGeneratorNamed(id) ?? []);
  if (clockHz === undefined || generators.length === 0) return;
  const draft = wrongDivisor(constant, generators, clockHz, { baud, words, ...recommendedTolerance(8, 16) });
  if (draft !== undefined) yield draft;
}

function wrongDivisor(
  constant: SerialConstant,
  generators: readonly BaudGenerator[],
  clockHz: number,
  expected: Expected,
): Draft | undefined {
  const made = generators.flatMap((generator) =>
    generator.samplings.flatMap(({ id }) => {
      const actual = generator.actualBaud(clockHz, { sampling: id, value: constant.value });
      return actual === undefined ? [] : [actual];
    }),
  );
  const nearest = generators
    .map((generator) => generator.nearest(clockHz, expected.baud))
    .find((found) => found.kind === "setting");
  const parts = generators.flatMap((generator) =>
    generator.samplings.flatMap(({ id }) => {
      const found = generator.nearest(clockHz, expected.baud, id);
      return found.kind === "setting" ? generator.registersOf(found.setting).map(({ value }) => value) : [];
    }),
  );
  const [actual] = made;
  if (actual === undefined || nearest === undefined || parts.includes(constant.value)) return undefined;
  if (made.some((rate) => isNear(rate, expected))) return undefined;
  const error = errorPercent(actual, expected.baud);
  const { setting, actualBaud } = nearest;
  return {
    span: spanOf(constant.span),
    message:
      `${constant.name} = ${constant.value} makes ${baudText(actual)} baud at ${clockText(clockHz)}, ` +
      `${percentText(error)} too ${error > 0 ? "fast" : "slow"} for ${expected.words}: ` +
      `${setting.value} (${setting.sampling}) makes ${baudText(actualBaud)}`,
    measured: { value: rounded(error), unit: "%" },
    limit: { atLeast: -rounded(expected.slow), atMost: rounded(expected.fast), unit: "%" },
    source: formatSource(recommendedErrorSources[16]),
    related: [{ span: spanOf(constant.note), message: "what the note says it is" }],
    fixes: [{ title: `Write ${setting.value}`, edits: [replaced(constant.span, String(setting.value))] }],
  };
}
