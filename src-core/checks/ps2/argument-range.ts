// Two commands take an argument: F3 a sample rate, E8 a resolution code. A mouse takes only the rates 10, 20, 40, 60,
// 80, 100 and 200 and the codes 0 to 3; to anything else it answers FE, and the old setting stays.
//
// The rule looks at the byte that follows F3 or E8 on a path. A command byte in its place is reported as well: then
// the argument was forgotten.

import type { Facts } from "../../facts/facts.ts";
import type { SentByte } from "../../facts/ps2/ps2-facts.ts";
import { hexText } from "../../figures.ts";
import type { Fix, Unit } from "../../finding.ts";
import { type Command, commandByCode } from "../../model/commands.ts";
import { resolutions, sampleRates } from "../../model/mouse-settings.ts";
import { allows, formatRange, type Quantity } from "../../model/quantities.ts";
import { formatSources } from "../../model/sources.ts";
import type { TypedExpression } from "../../reader/typed/nodes.ts";
import { literalToken, replaced, spanOf } from "../literal.ts";
import type { Draft, Rule } from "../rule.ts";
import { byteRoles } from "./byte-roles.ts";
import { notJudged } from "./constants.ts";
import { registerHost } from "./frames.ts";
import { known } from "./sources.ts";

const sampleRate = known("ps2.sample-rate");
const resolution = known("ps2.resolution");

const setUp = (rate: number): string =>
  registerHost(
    100,
    `int main(void) {\n  command(0xF3);\n  command(${rate});\n  command(0xF4);\n  for (;;) {\n    ps2_read();\n  }\n}\n`,
  );

export const argumentRange: Rule = {
  id: "ps2/argument-range",
  title: "A sample rate or resolution that a mouse does not take",
  severity: "error",
  why:
    "The mouse refuses the value and keeps the old one. The rest of the firmware then works with a report rate or a " +
    "resolution that the mouse does not have.",
  wrong: { "main.c": setUp(50) },
  right: { "main.c": setUp(60) },
  source: formatSources([...sampleRate.sources, ...resolution.sources]),
  *check(facts) {
    const judged: TypedExpression[] = [];
    for (const sequence of facts.ps2.sequences) {
      for (const role of byteRoles(sequence)) {
        if (role.kind !== "argument" || role.byte.byte === undefined) continue;
        if (role.byte.expression !== undefined) judged.push(role.byte.expression);
        const draft = badArgument(role.byte, role.byte.byte, role.of, role.commandByte);
        if (draft !== undefined) yield draft;
      }
    }
    for (const quantity of [sampleRate, resolution]) {
      for (const constant of notJudged(facts, quantity, judged)) {
        if (!allows(quantity, constant.value)) yield badConstant(quantity, constant);
      }
    }
  },
};

function badArgument(byte: SentByte, value: number, of: Command, commandByte: SentByte): Draft | undefined {
  const allowed = of.argument === "sample-rate" ? sampleRates : resolutions.map(({ code }) => code);
  if (allowed.includes(value)) return undefined;
  const limits = of.argument === "sample-rate" ? sampleRate : resolution;
  const forgotten = commandByCode(value);
  const what =
    of.argument === "sample-rate"
      ? `a mouse takes no sample rate of ${value} reports per second`
      : `a mouse takes no resolution code ${value}`;
  const message =
    forgotten !== undefined
      ? `${hexText(of.code)} (${of.name}) needs an argument before ${hexText(value)} (${forgotten.name})`
      : `${what}; it takes ${choices(of)}`;
  return {
    span: spanOf(byte.span),
    message,
    measured: { value, unit: limits.unit },
    ...brokenBound(value, allowed, limits.unit),
    source: formatSources(limits.sources),
    related: [{ span: spanOf(commandByte.span), message: `argument of ${hexText(of.code)} (${of.name})` }],
    fixes: forgotten === undefined ? nearestAllowed(byte, value, allowed, of) : [],
  };
}

/** None for a value between two that are allowed: it breaks neither end. */
function brokenBound(value: number, allowed: readonly number[], unit: Unit): Pick<Draft, "limit"> {
  const atLeast = Math.min(...allowed);
  const atMost = Math.max(...allowed);
  return value >= atLeast && value <= atMost ? {} : { limit: { atLeast, atMost, unit } };
}

/** A constant that a note calls a rate or a resolution. */
function badConstant(of: Quantity, { name, value, span, note }: Facts["ps2"]["constants"][number]): Draft {
  return {
    span: spanOf(span),
    message: `${name} is ${value}, which is no ${of.title} of a mouse; it takes ${formatRange(of)}`,
    measured: { value, unit: of.unit },
    source: formatSources(of.sources),
    related: [{ span: spanOf(note), message: "what the note says it is" }],
    fixes: [],
  };
}

function choices(of: Command): string {
  if (of.argument === "sample-rate") return formatRange(sampleRate).replace(/ report\/s$/, "");
  const codes = resolutions.map(({ code, countsPerMm }) => `${code} (${countsPerMm} per mm)`);
  return `${codes.slice(0, -1).join(", ")} or ${codes.at(-1)}`;
}

/** The nearest value that is allowed, the lower of two. */
function nearestAllowed(
  byte: SentByte,
  value: number,
  allowed: readonly number[],
  of: Command,
): readonly Fix[] {
  const token = byte.expression && literalToken(byte.expression);
  if (token === undefined) return [];
  const nearest = allowed.reduce((best, each) =>
    Math.abs(each - value) < Math.abs(best - value) ? each : best,
  );
  const text = /^0x/i.test(token.text) ? hexText(nearest) : String(nearest);
  const what = of.argument === "sample-rate" ? `${nearest} reports per second` : `resolution code ${nearest}`;
  return [{ title: `Set ${what}`, edits: [replaced(token, text)] }];
}
