import type { Knock } from "../../model/knocks.ts";
import type { ButtonName } from "../../model/layouts/layout.ts";
import type { Time } from "../time/time.ts";
import type { Spread } from "./spread.ts";

/** A mouse as data: what `VirtualMouse` does differently for it. Durations are those at the wires. */
export interface MouseProfile {
  /** As `--mouse` and edgewise.json name it. */
  readonly name: string;
  /** One sentence. */
  readonly title: string;
  /** Ids of the model's quantities that this mouse stresses; empty where its peculiarity is no figure. */
  readonly stresses: readonly string[];
  readonly buttons: readonly ButtonName[];
  readonly knocks: readonly MouseKnock[];
  readonly timing: MouseTiming;
  /** A combined mouse decides after the power-on reset which bus it is on, and stays with it. */
  readonly bus: "ps2" | "usb-or-ps2";
  /** What becomes of bytes that are no command, and of arguments out of range. */
  readonly invalidBytes: "refused" | "ignored";
  /** Every so-manieth byte from the host is answered with a resend request, sound though it was; 0 for none. */
  readonly resendRequestEvery: number;
  /** In every so-manieth byte of reports one data bit arrives turned over, so that parity is wrong; 0 for none. */
  readonly disturbedByteEvery: number;
  readonly glitch: Glitch | undefined;
  readonly incident: Incident | undefined;
}

export interface MouseKnock {
  readonly name: Knock["name"];
  /** The knock is taken only while the mouse answers with this id; undefined where it always is. */
  readonly onlyWithId: number | undefined;
}

export interface MouseTiming {
  /** From power to the self-test. */
  readonly powerOnReset: Spread;
  readonly selfTest: Spread;
  /** Phases of each clock pulse, drawn for each. */
  readonly clockLow: Spread;
  readonly clockHigh: Spread;
  /** From the change of data to the falling clock when the mouse sends. */
  readonly dataSetup: Time;
  /** From the rising clock to the look at data when the host sends; the acknowledge begins then as well. */
  readonly sample: Time;
  /** From the 11th rising clock to letting data go. */
  readonly acknowledgeRelease: Time;
  /** The clock has been high this long when a byte starts. */
  readonly busHigh: Time;
  /** From the host's letting the clock go to the first clock of the mouse. */
  readonly requestNoticed: Spread;
  /** From the host's letting the clock go to the reply, unless the byte takes longer. */
  readonly response: Spread;
  /** A request whose clock hold was shorter is not noticed. */
  readonly leastRequestHold: Time;
}

/** A short low pulse on the clock, in the rest before every so-manieth report. */
export interface Glitch {
  readonly everyReports: number;
  readonly width: Time;
  /** From the pulse to the report. */
  readonly ahead: Time;
}

/** Something that happens once, in the middle of a report: after its first byte. */
export interface Incident {
  readonly kind: "restart" | "unplug";
  /** Reports sent whole before. */
  readonly afterReports: number;
  /** How long an unplugged mouse stays away. */
  readonly away: Time;
}
