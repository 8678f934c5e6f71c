// A wheel is unlocked by a knock: the sample rates 200, 100 and 80 set one after the other, with nothing in between.
// 200, 200 and 80 unlock five buttons. The mouse then answers 3 or 4 to the id request instead of 0, and sends four
// bytes per report. With one rate wrong, or another command in between, it stays a plain mouse.
//
// The rule looks for three rates in a row that are almost a knock: one of the three differs, or they stand in another
// order; for two of the three before an id request; and for a knock that another command interrupts. A right knock
// whose id is never asked for is left alone: firmware may know its mouse.

import type { SendSequence, SentByte } from "../../facts/ps2/ps2-facts.ts";
import { hexText } from "../../figures.ts";
import type { Fix } from "../../finding.ts";
import { type Knock, knockByRates, knocks } from "../../model/knocks.ts";
import { formatSources } from "../../model/sources.ts";
import { literalToken, replaced, spanOf } from "../literal.ts";
import type { Draft, Rule } from "../rule.ts";
import { byteRoles } from "./byte-roles.ts";
import { registerHost } from "./frames.ts";

const source = formatSources([...new Set(knocks.flatMap(({ sources }) => sources))]);

const knocking = (last: number): string =>
  registerHost(
    100,
    `static void rate(uint8_t per_second) {
  command(0xF3);
  command(per_second);
}

int main(void) {
  rate(200);
  rate(100);
  rate(${last});
  command(0xF2);
  ps2_read();
  command(0xF4);
  for (;;) {
    ps2_read();
  }
}
`,
  );

export const wheelSequence: Rule = {
  id: "ps2/wheel-sequence",
  title: "The knock that unlocks the wheel is not complete",
  severity: "error",
  why:
    "The mouse takes the rates for what they are and stays a plain mouse with three-byte reports. Firmware that then " +
    "counts on four bytes takes every report apart wrongly.",
  wrong: { "main.c": knocking(60) },
  right: { "main.c": knocking(80) },
  source,
  *check({ ps2 }) {
    for (const sequence of ps2.sequences) yield* spoiltKnocks(sequence);
  },
};

/** A rate that was set, and whether a command stood between it and the rate before. */
interface Rate {
  readonly value: number;
  readonly byte: SentByte;
  readonly interruption: SentByte | undefined;
}

function* spoiltKnocks(sequence: SendSequence): Generator<Draft> {
  let rates: Rate[] = [];
  let interruption: SentByte | undefined;
  for (const role of byteRoles(sequence)) {
    if (role.kind === "argument" && role.of.argument === "sample-rate") {
      if (role.byte.byte === undefined) rates = [];
      else rates.push({ value: role.byte.byte, byte: role.byte, interruption });
      interruption = undefined;
    } else if (role.kind === "command" && role.command.argument !== "sample-rate") {
      const asksId = role.command.name === "get device id";
      if (asksId || startsAfresh(role.command.replies)) {
        yield* judge(rates, asksId ? role.byte : undefined);
        rates = [];
        interruption = undefined;
      } else {
        interruption ??= role.byte;
      }
    } else if (role.kind === "uncertain" || role.kind === "no command") {
      // Something else was sent, and nobody knows what it does to the knock.
      yield* judge(rates, undefined);
      rates = [];
      interruption = undefined;
    }
  }
  yield* judge(rates, undefined);
}

function startsAfresh(replies: readonly string[]): boolean {
  return replies.includes("self-test-passed");
}

/** Looks at the rates set since the start or the last id request; `asked` is the id request that follows. */
function* judge(rates: readonly Rate[], asked: SentByte | undefined): Generator<Draft> {
  for (let index = 0; index + 3 <= rates.length; index += 1) {
    const three = rates.slice(index, index + 3);
    const knock = knockByRates(three.map(({ value }) => value));
    const [, second, third] = three;
    if (knock !== undefined) {
      const between = second?.interruption ?? third?.interruption;
      if (between !== undefined && asked !== undefined) yield interrupted(knock, between, three);
      return;
    }
  }
  for (let index = 0; index + 3 <= rates.length; index += 1) {
    const three = rates.slice(index, index + 3);
    const meant = three.some(({ interruption }, at) => at > 0 && interruption !== undefined)
      ? undefined
      : meantKnock(three);
    if (meant !== undefined) {
      yield almost(meant, three);
      return;
    }
  }
  if (asked !== undefined && rates.length === 2) yield* halfKnock(rates, asked);
}

/** The knock of which two rates stand in their place, or all three in another order. */
function meantKnock(three: readonly Rate[]): Knock | undefined {
  const values = three.map(({ value }) => value);
  const inOrder = (list: readonly number[]): string => [...list].sort((a, b) => a - b).join(" ");
  return (
    knocks.find(({ rates }) => inOrder(rates) === inOrder(values)) ??
    knocks.find(({ rates }) => rates.filter((rate, at) => rate === values[at]).length === 2)
  );
}

const bothKnocks = knocks.map(({ rates, name }) => `${rates.join(", ")} (${name})`).join(" or ");

function almost(knock: Knock, three: readonly Rate[]): Draft {
  const wrong = three.findIndex(({ value }, at) => value !== knock.rates[at]);
  const at = three[wrong];
  const last = three[2];
  const byte = at?.byte ?? last?.byte ?? three[0]?.byte;
  const values = three.map(({ value }) => value);
  return {
    span: spanOf(byte?.span ?? { file: "", start: 0, end: 0 }),
    message: `the sample rates ${values.join(", ")} unlock nothing; the knock is ${bothKnocks}`,
    ...(at === undefined ? {} : { measured: { value: at.value, unit: "report/s" as const } }),
    source,
    related: three.filter((each) => each !== at).map((each) => placed(each)),
    fixes: at === undefined || inAnyOrder(knock, values) ? [] : corrected(at.byte, knock.rates[wrong]),
  };
}

function inAnyOrder(knock: Knock, values: readonly number[]): boolean {
  return (
    knock.rates.every((rate) => values.includes(rate)) && values.every((value) => knock.rates.includes(value))
  );
}

function placed({ value, byte }: Rate): Draft["related"][number] {
  return { span: spanOf(byte.span), message: `${value} is set here` };
}

function corrected({ expression }: SentByte, rate: number | undefined): readonly Fix[] {
  const token = expression && literalToken(expression);
  if (token === undefined || rate === undefined) return [];
  const text = /^0x/i.test(token.text) ? hexText(rate) : String(rate);
  return [{ title: `Set ${rate} reports per second`, edits: [replaced(token, text)] }];
}

function interrupted(knock: Knock, between: SentByte, three: readonly Rate[]): Draft {
  const what = between.byte === undefined ? "another command" : hexText(between.byte);
  return {
    span: spanOf(between.span),
    message: `${what} interrupts the ${knock.name} knock; set ${knock.rates.join(", ")} one right after the other`,
    source,
    related: three.map(placed),
    fixes: [],
  };
}

/** Two rates of a knock and then the id request: one is missing. */
function* halfKnock(rates: readonly Rate[], asked: SentByte): Generator<Draft> {
  const values = rates.map(({ value }) => value);
  const meant = knocks.find((knock) => isSubsequence(values, knock.rates));
  const [first] = knocks;
  if (meant === undefined || first === undefined || values[0] !== first.rates[0]) return;
  yield {
    span: spanOf(asked.span),
    message: `the id is asked for after the sample rates ${values.join(", ")} only; the knock is ${bothKnocks}`,
    source,
    related: rates.map(placed),
    fixes: [],
  };
}

function isSubsequence(part: readonly number[], whole: readonly number[]): boolean {
  let at = 0;
  for (const value of whole) if (value === part[at]) at += 1;
  return at === part.length;
}
