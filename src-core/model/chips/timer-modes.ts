/** The number after which it turns or starts again: fixed, that of a compare channel, or the capture register. */
export type TimerTop = number | { readonly channel: number } | "capture";

/** How a timer counts in one of its modes. */
export interface WaveMode {
  /** `up` starts again at 0, `up-down` turns at the top. */
  readonly shape: "up" | "up-down";
  readonly top: TimerTop;
  /** Where the overflow flag is set: after the highest number that fits, after the top, or after 0. */
  readonly overflow: "max" | "top" | "bottom" | "never";
  /** When a written compare value begins to count. */
  readonly update: "at-once" | "top" | "bottom";
  /** Outputs are set and cleared in turn, instead of at each match alone. */
  readonly isPwm: boolean;
}

const channelA = { channel: 0 } as const;

function normal(top: number): WaveMode {
  return { shape: "up", top, overflow: "max", update: "at-once", isPwm: false };
}

function clearOnCompare(top: TimerTop): WaveMode {
  return { shape: "up", top, overflow: "max", update: "at-once", isPwm: false };
}

function fast(top: TimerTop): WaveMode {
  return { shape: "up", top, overflow: "top", update: "bottom", isPwm: true };
}

function phaseCorrect(top: TimerTop, update: "top" | "bottom" = "top"): WaveMode {
  return { shape: "up-down", top, overflow: "bottom", update, isPwm: true };
}

/**
 * By WGMn2:0, timers of 8 bits. Table "Waveform Generation Mode Bit Description" of the ATmega328P datasheet
 * DS40002061A, timers 0 and 2, as avr8js 0.21.1 has it; 4 and 6 are reserved.
 */
export const waveModes8: readonly (WaveMode | undefined)[] = [
  normal(0xff),
  phaseCorrect(0xff),
  clearOnCompare(channelA),
  fast(0xff),
  undefined,
  phaseCorrect(channelA),
  undefined,
  fast(channelA),
];

/** By WGMn3:0, timers of 16 bits. The same table of timer 1; 13 is reserved. */
export const waveModes16: readonly (WaveMode | undefined)[] = [
  normal(0xffff),
  phaseCorrect(0xff),
  phaseCorrect(0x1ff),
  phaseCorrect(0x3ff),
  clearOnCompare(channelA),
  fast(0xff),
  fast(0x1ff),
  fast(0x3ff),
  phaseCorrect("capture", "bottom"),
  phaseCorrect(channelA, "bottom"),
  phaseCorrect("capture"),
  phaseCorrect(channelA),
  clearOnCompare("capture"),
  undefined,
  fast("capture"),
  fast(channelA),
];
