import type { ButtonName } from "../../../model/layouts/layout.ts";
import type { ReportValues } from "../../../model/layouts/values.ts";
import type { Time } from "../../time/time.ts";
import type { ReceivedByte } from "../uart/received-byte.ts";

/** A report as the PC's driver took it. */
export interface SerialReport {
  /** Start bit of its first byte. */
  readonly from: Time;
  /** Its last byte was there. */
  readonly time: Time;
  readonly bytes: readonly number[];
  /** In the layout's sense. An optional byte is a report of its own, with nothing but what it says. */
  readonly values: ReportValues;
}

/** Bytes that belong to no report. */
export interface Discarded {
  /** The last of them was there. */
  readonly time: Time;
  readonly bytes: readonly number[];
  readonly why: DiscardReason;
}

export type DiscardReason =
  /** A report had to begin, and this byte begins none. */
  | "no first byte"
  /** Another report began before this one was whole. */
  | "cut short"
  /** Nothing came for so long that the report is given up. */
  | "silence"
  /** The PC turned RTS off, or its run ended. */
  | "reset";

/** What a PC does with the bytes of a session: a driver, or in a test a real program behind a pty. */
export interface ReportReceiver {
  /** In order of time. */
  readonly reports: readonly SerialReport[];
  readonly discarded: readonly Discarded[];
  receive(byte: ReceivedByte): void;
  /** The mouse is reset: what has begun comes to no end, and no button is down. */
  reset(time: Time): void;
}

/** A button that went down or up. */
export interface ButtonChange {
  readonly time: Time;
  readonly button: ButtonName;
  readonly down: boolean;
}

const BUTTONS: readonly ButtonName[] = ["left", "right", "middle", "button4", "button5"];

/** Clicks out of reports, all buttons up at first; those of one report in the order of the layout's buttons. */
export function buttonChanges(
  reports: readonly { readonly time: Time; readonly values: ReportValues }[],
): readonly ButtonChange[] {
  const down = new Set<ButtonName>();
  const changes: ButtonChange[] = [];
  for (const { time, values } of reports) {
    for (const button of BUTTONS) {
      const is = values[button];
      if (is === undefined || is === down.has(button)) continue;
      if (is) down.add(button);
      else down.delete(button);
      changes.push({ time, button, down: is });
    }
  }
  return changes;
}
