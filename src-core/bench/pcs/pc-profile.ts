import type { Confidence, Source } from "../../model/sources.ts";
import type { Time } from "../time/time.ts";

export type PcName =
  | "rts-toggle"
  | "dtr-rts-toggle"
  | "plug-and-play"
  | "hurried"
  | "patient"
  | "second-reset";

/** The PC's lines, `true` for ON. */
export interface ControlLines {
  readonly dtr: boolean;
  readonly rts: boolean;
}

/** Lines that are kept so for a time. */
export interface LineStep extends ControlLines {
  readonly time: Time;
}

/** One try to make the mouse say what it is: it ends with RTS ON. */
export interface Question {
  /** Before RTS comes on. */
  readonly steps: readonly LineStep[];
  readonly asking: ControlLines;
  /** How long the PC waits for the first character of the answer, and for each further one. */
  readonly firstCharacter: Time;
  readonly nextCharacter: Time;
  /** The whole answer has to be there by then. */
  readonly whole: Time;
  /**
   * `usual`: as soon as the characters that a mouse with this layout sends are there, reports may come. `whole`: the PC
   * reads on until an end mark or until no more comes.
   */
  readonly reads: "usual" | "whole";
}

/** How one kind of PC treats the lines of its serial port. */
export interface PcProfile {
  readonly name: PcName;
  /** One sentence. */
  readonly title: string;
  /** From power-up, with both lines OFF, to the first step. */
  readonly startsAfter: Time;
  /** What opening the port does to the lines. */
  readonly opening: readonly LineStep[];
  /** Asked one after the other until one is answered. */
  readonly questions: readonly Question[];
  /** Lines of a PC that found no mouse. */
  readonly unanswered: ControlLines;
  /** It asks everything once more so long after the first byte of a report came; undefined where it never does. */
  readonly asksAgainAfter: Time | undefined;
  readonly sources: readonly Source[];
  readonly confidence: Confidence;
}
