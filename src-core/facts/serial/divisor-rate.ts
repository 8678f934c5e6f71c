import { avrClassic } from "../../model/divisors/avr-classic.ts";
import { evaluate } from "../../reader/constants/evaluate.ts";
import type { TypedExpression } from "../../reader/typed/nodes.ts";
import type { DataModel } from "../../reader/types/types.ts";
import { integerOf } from "../walk/values.ts";
import { namedBaud } from "./named-baud.ts";
import type { Rate } from "./serial-facts.ts";
import { bitIn, stateAfter } from "./usart-state.ts";
import type { DivisorWrite, UsartWrite } from "./usart-writes.ts";

/** Bits of the divisor's lower byte. */
const LOW_BITS = 8;
const LOW_MASK = (1 << LOW_BITS) - 1;

/** The write whose value stands for the whole divisor. */
export function principalWrite(divisor: DivisorWrite): UsartWrite | undefined {
  return divisor.whole ?? divisor.low ?? divisor.high;
}

/** The rate as far as the written values are known; `earlier` are the writes to the USART before `divisor`. */
export function rateOf(divisor: DivisorWrite, model: DataModel): Rate {
  const principal = principalWrite(divisor);
  const written = writtenValue(divisor);
  if (principal === undefined || written === undefined) return { kind: "unknown" };
  const { usart } = principal;
  const status = stateAfter("a", usart, [...divisor.before, ...divisor.following]);
  const speed = bitIn(status, usart.bits.doubleSpeed);
  const from = principal.write.value.from;
  return {
    kind: "divisor",
    held: written & largestDivisor(),
    intended: intendedValue(divisor, written, from, model),
    written: divisor.whole !== undefined ? "whole" : divisor.high !== undefined ? "bytes" : "low byte",
    samples: speed === undefined ? undefined : speed === 1 ? 8 : 16,
    named: from && namedBaud(from, principal.step.calls),
  };
}

/** The high byte is 0 after reset. */
function writtenValue({ whole, low, high }: DivisorWrite): number | undefined {
  if (whole !== undefined) return plainValue(whole);
  if (low === undefined) return undefined;
  const lower = plainValue(low);
  const upper = high === undefined ? 0 : plainValue(high);
  if (lower === undefined || upper === undefined) return undefined;
  return (upper << LOW_BITS) | (lower & LOW_MASK);
}

/** Only a plain assignment gives a divisor. */
function plainValue({ write }: UsartWrite): number | undefined {
  return write.operator === "=" ? integerOf(write.value) : undefined;
}

/** The value before the register, or a parameter on the way, cut it; `written` where it was not cut. */
function intendedValue(
  divisor: DivisorWrite,
  written: number,
  from: TypedExpression | undefined,
  model: DataModel,
): number {
  const value = from && evaluate(from, model);
  if (value?.kind !== "integer" && value?.kind !== "floating") return written;
  const meant = Math.trunc(Number(value.value));
  const cutToByte = (meant & LOW_MASK) === (written & LOW_MASK);
  if (divisor.whole !== undefined) return cutToByte ? meant : written;
  if (divisor.high !== undefined) return written;
  return cutToByte ? meant : written;
}

function largestDivisor(): number {
  return Math.max(...avrClassic.samplings.map(({ registerRange }) => registerRange.max));
}
