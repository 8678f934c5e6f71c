import { fieldsOf } from "../../../model/layouts/decode.ts";
import type { ReportLayout } from "../../../model/layouts/layout.ts";
import { type Synchronisation, synchronisation } from "../../../model/layouts/synchronisation.ts";
import type { ReportValues } from "../../../model/layouts/values.ts";
import { figure } from "../../time/figures.ts";
import type { Time } from "../../time/time.ts";
import type { ReceivedByte } from "../uart/received-byte.ts";
import type { Discarded, DiscardReason, ReportReceiver, SerialReport } from "./report-receiver.ts";

/** After this silence a driver takes the next byte as a first one. Linux kernel, sermouse.c. */
const SILENCE: Time = figure("serial.packet-gap", "typical");

/**
 * A driver for one serial layout. A report begins with a byte that passes the test of the layout's first byte; where no
 * other byte can pass it, such a byte begins a report wherever it comes. An optional byte is taken right behind a report.
 * Linux kernel, sermouse.c; mouse(4).
 */
export class LayoutReceiver implements ReportReceiver {
  readonly reports: SerialReport[] = [];
  readonly discarded: Discarded[] = [];
  readonly #layout: ReportLayout;
  readonly #synchronisation: Synchronisation;
  /** Bytes that a report always has. */
  readonly #length: number;
  #begun: number[] = [];
  #from: Time = 0;
  #last: Time = 0;
  /** A report has just ended that may have an optional byte. */
  #mayGoOn = false;

  constructor(layout: ReportLayout) {
    this.#layout = layout;
    this.#synchronisation = synchronisation(layout);
    this.#length = layout.optionalByte ?? layout.bytes.length;
  }

  receive({ from, time, value }: ReceivedByte): void {
    if (time - this.#last > SILENCE) {
      this.#giveUp(this.#last, "silence");
      this.#mayGoOn = false;
    }
    const begins = (value & this.#synchronisation.mask) === this.#synchronisation.value;
    if (begins && this.#synchronisation.unambiguous) this.#giveUp(this.#last, "cut short");
    this.#last = time;
    if (this.#begun.length > 0 || begins) this.#add(from, time, value);
    else if (this.#mayGoOn) this.#optional(from, time, value);
    else this.discarded.push({ time, bytes: [value], why: "no first byte" });
  }

  reset(time: Time): void {
    this.#giveUp(time, "reset");
    this.#mayGoOn = false;
  }

  #add(from: Time, time: Time, value: number): void {
    if (this.#begun.length === 0) this.#from = from;
    this.#begun.push(value);
    if (this.#begun.length < this.#length) return;
    const bytes = this.#begun;
    this.#begun = [];
    this.#mayGoOn = this.#layout.optionalByte !== undefined;
    this.reports.push({ from: this.#from, time, bytes, values: fieldsOf(this.#layout, bytes).values });
  }

  #optional(from: Time, time: Time, value: number): void {
    this.#mayGoOn = false;
    this.reports.push({ from, time, bytes: [value], values: this.#valuesOfOptional(value) });
  }

  /** The byte in its place behind a report that says nothing, without what that one would say. */
  #valuesOfOptional(value: number): ReportValues {
    const slots = this.#layout.bytes[this.#length] ?? [];
    const button = slots.findIndex(({ kind }) => kind === "button");
    const slot = slots[button];
    if (slot?.kind !== "button") return {};
    return { [slot.field]: ((value >> button) & 1) === 1 } satisfies ReportValues;
  }

  #giveUp(time: Time, why: DiscardReason): void {
    if (this.#begun.length === 0) return;
    this.discarded.push({ time, bytes: this.#begun, why });
    this.#begun = [];
  }
}
