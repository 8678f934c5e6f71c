import type { FirmwareRun } from "../../firmware-run.ts";

/** What cannot work any more where bytes on the serial line are not what they should be. */
const readByPc = [
  "serial/bit-time",
  "serial/ident-wrong",
  "serial/ident-late",
  "serial/ident-missing",
  "serial/throughput",
] as const;

/** What cannot work any more where bytes to and from the mouse do not arrive. */
const heardFromMouse = [
  "ps2/ack-ignored",
  "ps2/reply-timeout-short",
  "ps2/reset-wait-short",
  "ps2/wait-forever",
  "ps2/packet-resync",
  "ps2/reporting-not-enabled",
  "serial/ident-missing",
] as const;

/** What a fault of each rule leads to in a run, in one step; without a way back to itself. */
const leadsTo: Readonly<Record<string, readonly string[]>> = {
  "board/divisor-range": readByPc,
  "board/integer-overflow": [...readByPc, ...heardFromMouse],
  "board/pin-conflict": ["serial/idle-level", ...readByPc, ...heardFromMouse, "ps2/line-driven-high"],
  "board/pin-no-interrupt": [...heardFromMouse, "serial/ident-missing"],
  "board/shared-not-volatile": [...heardFromMouse, "serial/ident-missing"],
  "board/shared-not-atomic": ["ps2/packet-resync", "report/counts-lost"],
  "board/delay-in-isr": ["ps2/clock-missed", "ps2/sample-edge", "serial/blocks-receive", "serial/bit-time"],
  "serial/baud-error": readByPc,
  "serial/line-format": readByPc,
  "serial/idle-level": readByPc,
  "serial/bit-time": ["serial/ident-wrong"],
  "serial/ident-wrong": ["serial/ident-late"],
  "serial/ident-late": ["serial/ident-missing"],
  "serial/ident-missing": ["serial/control-line-ignored"],
  "serial/control-line-ignored": ["report/counts-lost"],
  "serial/throughput": ["report/counts-lost"],
  "serial/blocks-receive": ["ps2/clock-missed", ...heardFromMouse],
  "ps2/no-pullup": ["ps2/request-hold-short", ...heardFromMouse],
  "ps2/line-driven-high": ["ps2/sample-edge", ...heardFromMouse],
  "ps2/request-hold-short": heardFromMouse,
  "ps2/sample-edge": ["ps2/parity-wrong", ...heardFromMouse],
  "ps2/parity-wrong": heardFromMouse,
  "ps2/command-unknown": heardFromMouse,
  "ps2/argument-range": heardFromMouse,
  "ps2/wheel-sequence": ["report/counts-lost"],
  "ps2/clock-missed": heardFromMouse,
  "ps2/reset-wait-short": ["ps2/reply-timeout-short", "ps2/reporting-not-enabled"],
  "ps2/reply-timeout-short": ["ps2/ack-ignored", "ps2/reporting-not-enabled"],
  "ps2/ack-ignored": ["ps2/reporting-not-enabled"],
  "ps2/wait-forever": ["ps2/reporting-not-enabled", "ps2/packet-resync", "serial/ident-late"],
  // Who loses his place behind a byte that he rightly leaves out looks like somebody who took it.
  "ps2/packet-resync": ["ps2/parity-unchecked"],
  "ps2/parity-unchecked": ["report/counts-lost"],
  "ps2/reporting-not-enabled": ["report/counts-lost"],
  // Where movements come out as others, it cannot be told when one arrived.
  "report/layout": ["serial/throughput"],
  "report/sync-bit": ["serial/throughput"],
  "report/y-direction": ["serial/throughput"],
  "report/sign-lost": ["serial/throughput"],
  "report/clip-missing": ["serial/throughput"],
  "report/button-map": ["serial/throughput"],
  "report/length": ["serial/throughput", "serial/ident-wrong"],
};

/** The rules whose faults in a run may follow from a fault of this one, in however many steps. */
export function consequencesOf(rule: string): ReadonlySet<string> {
  const found = new Set<string>();
  const add = (from: string): void => {
    for (const next of leadsTo[from] ?? []) {
      if (found.has(next)) continue;
      found.add(next);
      add(next);
    }
  };
  add(rule);
  return found;
}

/**
 * Runs without the consequences of what went wrong in them or in a run before: the plainest comes first, and what is wrong in that
 * goes on being wrong with other mice.
 */
export function withoutConsequences(runs: readonly FirmwareRun[]): readonly FirmwareRun[] {
  const explained = new Set<string>();
  return runs.map((run) => {
    for (const { rule } of run.faults) for (const each of consequencesOf(rule)) explained.add(each);
    return { ...run, faults: run.faults.filter(({ rule }) => !explained.has(rule)) };
  });
}
