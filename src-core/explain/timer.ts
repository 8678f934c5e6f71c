import type { TimerSetUp } from "../facts/board/timer-set-ups.ts";
import type { Facts } from "../facts/facts.ts";
import { clockText, percentText, plain } from "../figures.ts";
import { quantity } from "../model/quantities.ts";
import type { Place } from "./place.ts";

/** What the timer that a register belongs to does as the program sets it up; undefined for other registers. */
export function timerLine({ facts }: Place, register: string): string | undefined {
  const setUp = facts.board
    .timers()
    .find(
      ({ timer: { number, control, compare } }) =>
        [...control, ...compare].some(
          ({ name }) => name === register || `${name}L` === register || `${name}H` === register,
        ) || register.startsWith(`ICR${number}`),
    );
  return setUp && timerText(facts, setUp);
}

/** `Timer 1 counts the clock divided by 8 from 0 to 1666 (OCR1A) and starts again: every 833.5 us at 16 MHz.` */
export function timerText({ board, serial }: Facts, setUp: TimerSetUp): string {
  const { timer, mode, divider, top, topRegister, periodCycles } = setUp;
  const clock = divider === 1 ? "the chip's clock" : `the chip's clock divided by ${divider}`;
  const from = topRegister === undefined ? "" : ` (\`${topRegister}\`)`;
  const turn = mode.shape === "up" ? "and starts again" : "and back";
  const hz = board.clock?.hz;
  const us = hz === undefined ? undefined : (periodCycles * 1e6) / hz;
  const time =
    us === undefined || hz === undefined
      ? `${periodCycles} cycles`
      : `${plain(us, 2)} us at ${clockText(hz)}`;
  const bit =
    us === undefined ? "" : bitText(us, serial.wantedBaud?.baud ?? quantity("serial.baud")?.typical);
  return `Timer ${timer.number} counts ${clock} from 0 to ${top}${from} ${turn}: every ${time}.${bit}`;
}

/** How far off a period may be, in per cent, and still be meant for a bit, half of one or a third of one. */
const near = 8;

/** A period that is about a bit, or as often as bits are sampled. */
function bitText(us: number, baud: number | undefined): string {
  if (baud === undefined) return "";
  const bit = 1e6 / baud;
  for (const [parts, name] of [
    [1, "a bit"],
    [2, "half a bit"],
    [3, "a third of a bit"],
    [4, "a quarter of a bit"],
  ] as const) {
    const off = ((us * parts) / bit - 1) * 100;
    if (Math.abs(off) > near) continue;
    const how =
      Math.abs(off) < 0.005 ? "exactly that" : `${percentText(off)} ${off > 0 ? "longer" : "shorter"}`;
    return ` At ${baud} baud ${name} lasts ${plain(bit / parts, 2)} us: this is ${how}.`;
  }
  return "";
}
