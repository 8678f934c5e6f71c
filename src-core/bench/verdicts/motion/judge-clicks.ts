import type { ButtonName } from "../../../model/layouts/layout.ts";
import { type ButtonChange, buttonChanges } from "../../pcs/reports/report-receiver.ts";
import type { Run } from "../../run-record.ts";
import type { Time } from "../../time/time.ts";
import type { Fault, FindingsOfRun } from "../findings.ts";
import { startOfByte } from "../serial/start-of-byte.ts";
import { lastSender } from "./blame.ts";
import type { Incoming } from "./incoming.ts";
import type { Part } from "./part.ts";

export interface Clicks {
  readonly in: readonly ButtonChange[];
  readonly out: readonly ButtonChange[];
}

/** What a session carried began with this report of the mouse; `fault` where its clicks do not agree then. */
interface Compared extends Clicks {
  readonly first: number;
  readonly fault: Pick<Fault, "message" | "time" | "measured" | "limit"> | undefined;
}

/**
 * Every button goes down and up at the PC as often as on the mouse, and in the same order. Gives the first of the mouse's
 * reports that the session may have carried besides.
 */
export function judgeClicks(
  part: Part,
  run: Run,
  findings: FindingsOfRun,
): Clicks & { readonly first: number } {
  const { early } = part;
  const firsts = Array.from({ length: early + 1 }, (_, index) => early - index);
  const compared = firsts.map((first) => compare(part, first, run));
  const best = compared.find(({ fault }) => fault === undefined) ?? compare(part, early, run);
  const { fault } = best;
  if (fault !== undefined) {
    const next = part.out.find(({ time }) => time >= fault.time);
    const at = next === undefined ? lastSender(run) : startOfByte(run.edges, next.from);
    findings.fail({ rule: "report/counts-lost", at, otherwise: run.firmware.places?.main, ...fault });
  }
  return best;
}

function compare(part: Part, first: number, run: Run): Compared {
  const incoming = part.incoming.slice(first);
  const buttons = run.wanted.layout.fields;
  const out = buttonChanges(part.out);
  const all = changesOf(incoming, buttons);
  const lost = firstLost(all, out, part.isCut);
  if (lost === undefined) return { first, in: all, out, fault: orderFault(all, out) };
  const sound = changesOf(
    incoming.filter(({ spoilt }) => spoilt === undefined),
    buttons,
  );
  if (firstLost(sound, out, part.isCut) === undefined) return { first, in: sound, out, fault: undefined };
  const { button, time } = lost;
  const count = (changes: readonly ButtonChange[]): number =>
    changes.filter((each) => each.button === button).length;
  const message = `the ${button} button goes down or up ${count(all)} times on the mouse and ${count(out)} times at the PC`;
  const limit = { atLeast: count(all), atMost: count(all), unit: "none" } as const;
  return {
    first,
    in: all,
    out,
    fault: { message, time, measured: { value: count(out), unit: "none" }, limit },
  };
}

function orderFault(wanted: readonly ButtonChange[], out: readonly ButtonChange[]): Compared["fault"] {
  const swapped = firstSwapped(wanted, out);
  if (swapped === undefined) return undefined;
  const { button, time } = swapped;
  const message = `the ${button} button changes at the PC after a button that it changed before on the mouse`;
  return { message, time };
}

function changesOf(reports: readonly Incoming[], fields: readonly string[]): readonly ButtonChange[] {
  return buttonChanges(reports).filter(({ button }) => fields.includes(button));
}

/** The first change of a button that has none of the same sense opposite it. */
function firstLost(
  wanted: readonly ButtonChange[],
  out: readonly ButtonChange[],
  isCut: boolean,
): { readonly button: ButtonName; readonly time: Time } | undefined {
  const left = new Map<ButtonName, ButtonChange[]>();
  for (const change of out) left.set(change.button, [...(left.get(change.button) ?? []), change]);
  for (const { button, time } of wanted) {
    if (left.get(button)?.shift() === undefined && !isCut) return { button, time };
  }
  for (const [, changes] of left) {
    const [extra] = changes;
    if (extra !== undefined) return extra;
  }
  return undefined;
}

/** The nth change of a button is the nth at the PC; going through the mouse's, the PC's must not go back in time. */
function firstSwapped(
  wanted: readonly ButtonChange[],
  out: readonly ButtonChange[],
): ButtonChange | undefined {
  let latest: Time = 0;
  for (const [change, at] of pairs(wanted, out)) {
    if (at.time < latest) return change;
    latest = at.time;
  }
  return undefined;
}

/** Changes in beside the changes out that brought them, as far as there are. */
export function* pairs(
  wanted: readonly ButtonChange[],
  out: readonly ButtonChange[],
): Generator<readonly [ButtonChange, ButtonChange]> {
  const seen = new Map<ButtonName, number>();
  for (const change of wanted) {
    const nth = seen.get(change.button) ?? 0;
    seen.set(change.button, nth + 1);
    const at = out.filter(({ button }) => button === change.button)[nth];
    if (at !== undefined) yield [change, at];
  }
}
