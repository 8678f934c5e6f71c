import type { Time } from "../time/time.ts";
import type { ReceivedByte } from "./uart/received-byte.ts";

/** What a PC saw of a run, besides the reports that its receiver took. */
export interface PcRecord {
  /** Everything that came in, asked for or not. */
  readonly bytes: readonly ReceivedByte[];
  readonly answers: readonly Answer[];
  readonly sessions: readonly Session[];
}

/** One question and what came of it. */
export interface Answer {
  /** RTS came on. */
  readonly asked: Time;
  /** The PC was content, or waited no longer; undefined where the run ended before. */
  readonly ended: Time | undefined;
  readonly bytes: readonly ReceivedByte[];
  /**
   * `identified`: as a mouse with the layout. `silent`: nothing came in time. `wrong`: something else came. `open`: the
   * run ended before.
   */
  readonly outcome: "identified" | "silent" | "wrong" | "open";
}

/** A time in which bytes were taken for reports. */
export interface Session {
  readonly from: Time;
  /** RTS went off; undefined where the session lasted to the end of the run. */
  readonly to: Time | undefined;
}
