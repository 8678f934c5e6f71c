import type { Usart } from "../../model/chips/chip.ts";
import { macrosOf } from "../board/interrupts-off.ts";
import type { RegisterWrite } from "../walk/events.ts";
import type { Step } from "./steps.ts";
import type { UsartPart, UsartRegister } from "./usarts.ts";

/** A write to one of a USART's registers, with the way to it. */
export interface UsartWrite {
  readonly usart: Usart;
  readonly part: UsartPart;
  /** It is meant for UCSRnC but lacks URSEL, so that UBRRnH takes it. */
  readonly lost: boolean;
  readonly write: RegisterWrite;
  readonly step: Step;
}

/** The divisor as it is written: at once, or as two bytes in either order, or the low byte alone. */
export interface DivisorWrite {
  readonly whole: UsartWrite | undefined;
  readonly low: UsartWrite | undefined;
  readonly high: UsartWrite | undefined;
  /** All writes to the same USART from this one on, up to its next divisor; in order. */
  readonly following: readonly UsartWrite[];
  /** Those before it, back to the last divisor. */
  readonly before: readonly UsartWrite[];
}

export function usartWrites(
  steps: readonly Step[],
  registers: ReadonlyMap<string, UsartRegister>,
): readonly UsartWrite[] {
  return steps.flatMap((step) => {
    if (step.event.kind !== "register-write") return [];
    const write = step.event;
    const found = registers.get(write.register.name);
    return found === undefined ? [] : [{ usart: found.usart, ...partWritten(found, write), write, step }];
  });
}

/** Where UBRRnH and UCSRnC share an address, the bit URSEL of what is written says which of them takes it. */
function partWritten(
  { usart, part }: UsartRegister,
  write: RegisterWrite,
): Pick<UsartWrite, "part" | "lost"> {
  const { select } = usart.bits;
  if (select === undefined || (part !== "c" && part !== "divisor-high")) return { part, lost: false };
  const mask = 1 << select.bit;
  const { first } = write.at;
  const isMeantAsC = [first.text, ...macrosOf(first)].includes(usart.control[2].name);
  if ((write.ones & mask) !== 0) return { part: "c", lost: false };
  if (isMeantAsC) return { part: "c", lost: (write.zeros & mask) !== 0 };
  return { part: "divisor-high", lost: false };
}

/** The divisors of one USART in order. */
export function divisorWrites(writes: readonly UsartWrite[]): readonly DivisorWrite[] {
  const found: DivisorWrite[] = [];
  let before: UsartWrite[] = [];
  for (let at = 0; at < writes.length; ) {
    const first = writes[at];
    if (first === undefined) break;
    const divisor = divisorAt(writes, at);
    if (divisor === undefined) {
      before.push(first);
      at++;
      continue;
    }
    const next = writes.findIndex((_, index) => index >= divisor.end && isDivisorPart(writes[index]));
    const end = next < 0 ? writes.length : next;
    const following = [...divisor.between, ...writes.slice(divisor.end, end)];
    found.push({ ...divisor.parts, following, before });
    before = following;
    at = end;
  }
  return found;
}

interface DivisorAt {
  readonly parts: Pick<DivisorWrite, "whole" | "low" | "high">;
  /** Writes to other registers between the two bytes. */
  readonly between: readonly UsartWrite[];
  readonly end: number;
}

/** Two bytes belong together where no other byte of the divisor stands between them. */
function divisorAt(writes: readonly UsartWrite[], at: number): DivisorAt | undefined {
  const first = writes[at];
  if (first === undefined || !isDivisorPart(first)) return undefined;
  if (first.part === "divisor") {
    return { parts: { whole: first, low: undefined, high: undefined }, between: [], end: at + 1 };
  }
  const wanted = first.part === "divisor-low" ? "divisor-high" : "divisor-low";
  const partner = writes.findIndex((_, index) => index > at && isDivisorPart(writes[index]));
  const other = writes[partner];
  const pair = other?.part === wanted ? other : undefined;
  const [low, high] = first.part === "divisor-low" ? [first, pair] : [pair, first];
  const parts = { whole: undefined, low, high };
  if (pair === undefined) return { parts, between: [], end: at + 1 };
  return { parts, between: writes.slice(at + 1, partner), end: partner + 1 };
}

function isDivisorPart(write: UsartWrite | undefined): boolean {
  return write?.part.startsWith("divisor") === true;
}
