import type { SetUp } from "../facts/serial/serial-facts.ts";
import { clockText, percentText, plain } from "../figures.ts";
import type { Span } from "../finding.ts";
import { avrClassic } from "../model/divisors/avr-classic.ts";
import { sketchCoreSetting } from "../model/divisors/avr-library-settings.ts";
import type { Setting } from "../model/divisors/baud-generator.ts";
import { formatSources } from "../model/sources.ts";
import { type Explanation, explanation, holds } from "./explanation.ts";
import type { Place } from "./place.ts";
import { errorLine, errorSources } from "./rate-error.ts";
import { registerUse } from "./register-use.ts";

/** The divisor or the rate that a serial port is set up with. */
export function explainLineRate(place: Place): Explanation | undefined {
  const under = setUpAt(place);
  if (under === undefined) return undefined;
  const { setUp, span } = under;
  const clockHz = place.facts.board.clock?.hz;
  const setting = settingOf(setUp, clockHz);
  const wanted = wantedOf(place, setUp);
  if (setting === undefined) return withoutDivisor(setUp, span);
  if (clockHz === undefined) {
    return explanation(span, `Divisor ${setting.value}`, [
      "The chip's clock is not known, so neither is the rate. Say it in a note: `@wire board ... clock=16MHz`.",
    ]);
  }
  const actual = avrClassic.actualBaud(clockHz, setting);
  if (actual === undefined) return undefined;
  return explanation(span, `${plain(actual, actual < 10_000 ? 1 : 0)} baud at ${clockText(clockHz)}`, [
    formulaLine(setUp, setting),
    wanted === undefined ? undefined : errorLine(setUp, actual, wanted),
    wanted === undefined ? undefined : nearestLine(clockHz, wanted, setting),
    `Source: ${formatSources([...avrClassic.sources.slice(0, 1), ...errorSources])}.`,
  ]);
}

/** The rate that a set-up makes, in baud; undefined where divisor or clock are not known. */
export function actualBaudOf(setUp: SetUp, clockHz: number | undefined): number | undefined {
  const setting = settingOf(setUp, clockHz);
  if (setting === undefined || clockHz === undefined) return undefined;
  return avrClassic.actualBaud(clockHz, setting);
}

interface SetUpAt {
  readonly setUp: SetUp;
  readonly span: Span;
}

/** The set-up whose rate stands at the place; also by the register's name and by the high byte of a divisor. */
function setUpAt(place: Place): SetUpAt | undefined {
  const { facts, file, offset } = place;
  const { setUps } = facts.serial;
  const setUp = setUps.find(({ span }) => holds(span, file, offset));
  if (setUp !== undefined) return { setUp, span: setUp.span };
  const use = setUps.length === 0 ? undefined : registerUse(place);
  const name = use?.operator === "=" ? dividing.exec(use.register.name)?.[1] : undefined;
  const same = setUps.find(
    ({ target }) => name !== undefined && dividing.exec(target?.name ?? "")?.[1] === name,
  );
  return use === undefined || same === undefined ? undefined : { setUp: same, span: use.span };
}

/** `UBRR0`, `UBRR0L`, `UBRR0H`. */
const dividing = /^(UBRR\d?)[LH]?$/;

function settingOf({ rate, by }: SetUp, clockHz: number | undefined): Setting | undefined {
  if (rate.kind === "divisor") return { sampling: rate.samples === 8 ? "U2X=1" : "U2X=0", value: rate.held };
  if (rate.kind === "unknown" || by !== "core" || clockHz === undefined || rate.baud <= 0) return undefined;
  return sketchCoreSetting(clockHz, rate.baud);
}

function withoutDivisor({ rate, by }: SetUp, span: Span): Explanation | undefined {
  if (rate.kind !== "baud" || rate.baud <= 0) return undefined;
  const bit = `One bit lasts ${plain(1e6 / rate.baud, 1)} us`;
  const how = by === "software serial" ? `${bit}, timed by the program itself.` : `${bit}.`;
  return explanation(span, `${rate.baud} baud`, [how]);
}

function wantedOf({ facts }: Place, setUp: SetUp): number | undefined {
  if (facts.serial.mouseSetUps.includes(setUp) && facts.serial.wantedBaud !== undefined) {
    return facts.serial.wantedBaud.baud;
  }
  if (setUp.rate.kind === "baud") return setUp.rate.baud;
  return setUp.rate.kind === "divisor" ? setUp.rate.named : undefined;
}

function formulaLine({ by, rate }: SetUp, { sampling, value }: Setting): string {
  const formula =
    avrClassic.formula.split(", ").find((each) => each.endsWith(sampling)) ?? avrClassic.formula;
  const who = by === "core" ? "The sketch core sets " : "";
  const cut =
    rate.kind === "divisor" && rate.intended !== rate.held
      ? ` The code means ${rate.intended}, which the register cannot hold.`
      : "";
  return `${who}${avrClassic.register} = ${value}: ${formula}.${cut}`;
}

/** The nearest divisor as the speed bit stands, which is the smallest change, and the other where it comes nearer. */
function nearestLine(clockHz: number, wanted: number, setting: Setting): string | undefined {
  const best = avrClassic.nearest(clockHz, wanted);
  if (best.kind === "out-of-range") return best.reason;
  const off = (rate: number | undefined) => Math.abs((rate ?? 0) - wanted);
  const actual = off(avrClassic.actualBaud(clockHz, setting));
  if (actual <= off(best.actualBaud)) return "No divisor comes nearer.";
  const same = avrClassic.nearest(clockHz, wanted, setting.sampling);
  const nearer = same.kind === "setting" && off(same.actualBaud) < actual ? [same] : [];
  if (nearer.every(({ actualBaud }) => off(best.actualBaud) < off(actualBaud))) nearer.push(best);
  const choices = nearer.map(
    ({ setting: { value, sampling }, errorPercent }) =>
      `${value} with ${sampling}, ${percentText(errorPercent)} off`,
  );
  return `${nearer.length > 1 ? "Nearer" : "Nearest"}: ${choices.join("; ")}.`;
}
