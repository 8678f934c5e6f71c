import { figure } from "../../time/figures.ts";
import type { Time } from "../../time/time.ts";
import type { FindingsOfRun } from "../findings.ts";
import type { RunFigures } from "../verdict.ts";
import type { HostSide } from "./host-frames.ts";

const RULE = "ps2/request-hold-short";

/** How long the firmware held the clock low, before sending and to keep the mouse quiet. */
export function judgeHolds({ frames, holds }: HostSide, findings: FindingsOfRun): RunFigures["held"] {
  const lengths: Time[] = [];
  for (const { held, released, cause } of frames) {
    if (held === undefined) continue;
    const what = "before sending, the clock is held low for";
    findings.measureTime("ps2.request-hold", released - held, RULE, what, held, cause.at);
    lengths.push(released - held);
  }
  for (const { from, to, cause } of holds) {
    if (from === undefined) continue;
    const what = "to keep the mouse quiet, the clock is held low for";
    findings.measureTime("ps2.inhibit-hold", to - from, RULE, what, from, cause.at);
    lengths.push(to - from);
  }
  return { total: lengths.reduce((sum, each) => sum + each, 0), longest: Math.max(0, ...lengths) };
}

/** After a pulse of the mouse's clock the bus is busy so long: the slowest clock there is. */
export const BUSY_AFTER_CLOCK = figure("ps2.clock-period", "max") + figure("ps2.bus-high", "min");
