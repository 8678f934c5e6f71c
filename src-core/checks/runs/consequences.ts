import type { FirmwareRun, RunFault } from "../../firmware-run.ts";

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

const countsLost = "report/counts-lost";

/** What a disturbance is blamed for where counts do not agree behind it. */
const blamedOnDisturbance = ["ps2/packet-resync", "ps2/parity-unchecked"] as const;

/**
 * Counts are lost of what a mouse reports to a PC that listens: setting up is over. A disturbance is told with the run that it
 * was in, and so is a line that is too slow.
 */
const pastWhenCountsAreLost: readonly string[] = [
  ...blamedOnDisturbance,
  "ps2/ack-ignored",
  "ps2/reply-timeout-short",
  "ps2/reset-wait-short",
  "ps2/reporting-not-enabled",
  "serial/ident-wrong",
  "serial/ident-late",
  "serial/ident-missing",
  "serial/control-line-ignored",
  "serial/throughput",
];

/** Where movements come out as others, it cannot be told when one arrived, nor why they do not agree. */
const comeOutAsOthers = ["serial/throughput", countsLost, ...blamedOnDisturbance] as const;

/** What a fault of each rule leads to in a run, in one step; without a way back to itself. */
const leadsTo: Readonly<Record<string, readonly string[]>> = {
  "board/divisor-range": readByPc,
  "board/integer-overflow": [...readByPc, ...heardFromMouse],
  "board/pin-conflict": ["serial/idle-level", ...readByPc, ...heardFromMouse, "ps2/line-driven-high"],
  // Bits that the handler would send stay away: the line keeps its level for the whole byte.
  "board/pin-no-interrupt": ["ps2/parity-wrong", ...heardFromMouse, "serial/ident-missing"],
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
  "report/layout": comeOutAsOthers,
  "report/sync-bit": comeOutAsOthers,
  "report/y-direction": comeOutAsOthers,
  "report/sign-lost": comeOutAsOthers,
  "report/clip-missing": comeOutAsOthers,
  "report/button-map": comeOutAsOthers,
  "report/length": [...comeOutAsOthers, "serial/ident-wrong"],
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
 * The rules whose faults in a run are explained by one of this rule in the text, or in another run. Counts that get lost where
 * nothing else is wrong are not, if that is past by then.
 */
export function explainedElsewhere(rule: string): readonly string[] {
  const isPast = pastWhenCountsAreLost.includes(rule);
  return [...consequencesOf(rule)].filter((each) => each !== countsLost || !isPast);
}

/**
 * Runs without the consequences of what went wrong in them or in a run before: the plainest comes first, and what is wrong in that
 * goes on being wrong with other mice. Where counts get lost by themselves, they do so behind a disturbance as well, which is not
 * to blame then.
 */
export function withoutConsequences(runs: readonly FirmwareRun[]): readonly FirmwareRun[] {
  const elsewhere = new Set<string>();
  const left = runs.map((run) => {
    const here = new Set(run.faults.flatMap(({ rule }) => [...consequencesOf(rule)]));
    for (const { rule } of run.faults) for (const each of explainedElsewhere(rule)) elsewhere.add(each);
    return { ...run, faults: run.faults.filter(({ rule }) => !here.has(rule) && !elsewhere.has(rule)) };
  });
  if (!left.some(({ faults }) => faults.some(({ rule }) => rule === countsLost))) return left;
  const isBlamed = ({ rule }: RunFault): boolean => blamedOnDisturbance.some((each) => each === rule);
  return left.map((run) => ({ ...run, faults: run.faults.filter((fault) => !isBlamed(fault)) }));
}
