import type { ButtonName } from "../../../model/layouts/layout.ts";
import { type ButtonChange, buttonChanges } from "../../pcs/reports/report-receiver.ts";
import type { Run } from "../../run-record.ts";
import type { Time } from "../../time/time.ts";
import type { FindingsOfRun } from "../findings.ts";
import type { Incoming } from "./incoming.ts";
import type { Carried, Part } from "./part.ts";

export interface Clicks {
  readonly in: readonly ButtonChange[];
  readonly out: readonly ButtonChange[];
}

/** Every button goes down and up at the PC as often as on the mouse, and in the same order. */
export function judgeClicks(part: Part, carried: Carried, run: Run, findings: FindingsOfRun): Clicks {
  const incoming = part.incoming.slice(carried.first, carried.last);
  const out = buttonChanges(part.out);
  const buttons = run.wanted.layout.fields;
  const wanted = changesOf(incoming, buttons);
  const without = changesOf(
    incoming.filter(({ spoilt }) => spoilt === undefined),
    buttons,
  );
  const lost = firstLost(wanted, out, part.isCut);
  if (lost !== undefined && firstLost(without, out, part.isCut) !== undefined) {
    const { button, time } = lost;
    const text = (changes: readonly ButtonChange[]): number =>
      changes.filter((each) => each.button === button).length;
    findings.fail({
      rule: "report/counts-lost",
      message: `the ${button} button goes down or up ${text(wanted)} times on the mouse and ${text(out)} times at the PC`,
      time,
      at: undefined,
      measured: { value: text(out), unit: "none" },
      limit: { atLeast: text(wanted), atMost: text(wanted), unit: "none" },
    });
    return { in: wanted, out };
  }
  const swapped = lost === undefined ? firstSwapped(wanted, out) : undefined;
  if (swapped !== undefined) {
    findings.fail({
      rule: "report/counts-lost",
      message: `the ${swapped.button} button changes at the PC after a button that it changed before on the mouse`,
      time: swapped.time,
      at: undefined,
    });
  }
  return { in: lost === undefined ? wanted : without, out };
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
