import type { Span } from "../../finding.ts";
import type { AvrChip, Chip, Timer } from "../../model/chips/chip.ts";
import { type WaveMode, waveModes8, waveModes16 } from "../../model/chips/timer-modes.ts";
import { registerBitNamed, registerNamed } from "../../model/chips.ts";
import { visibleRange } from "../../reader/tokens.ts";
import type { RegisterState } from "./register-states.ts";

/** How the program sets a timer up, as far as the text tells. */
export interface TimerSetUp {
  readonly timer: Timer;
  readonly mode: WaveMode;
  /** What the chip's clock is divided by. */
  readonly divider: number;
  /** The highest number that it counts to. */
  readonly top: number;
  /** The register that holds the top; undefined for a fixed one. */
  readonly topRegister: string | undefined;
  /** Cycles of the chip's clock from one start to the next. */
  readonly periodCycles: number;
  /** Every write to one of its registers. */
  readonly writes: readonly Span[];
}

type States = ReadonlyMap<string, RegisterState>;

/** Timers that run from the chip's clock, with a mode and a top that are known. */
export function timerSetUps(chip: Chip | undefined, states: States): readonly TimerSetUp[] {
  if (chip?.kind !== "avr") return [];
  return chip.timers.flatMap((timer) => setUpOf(chip, timer, states) ?? []);
}

function setUpOf(chip: AvrChip, timer: Timer, states: States): TimerSetUp | undefined {
  const { number, width, control, compare, prescalers } = timer;
  const written = [...control, ...compare, ...captureOf(chip, number)].flatMap(
    ({ name }) => states.get(name)?.writes ?? [],
  );
  // Timers with more clock bits than three have modes of their own.
  if (written.length === 0 || prescalers.length > 8) return undefined;
  const select = bitsOf(
    chip,
    states,
    [2, 1, 0].map((bit) => `CS${number}${bit}`),
  );
  const mode = bitsOf(
    chip,
    states,
    [3, 2, 1, 0].map((bit) => `WGM${number}${bit}`),
  );
  const divider = select === undefined ? undefined : prescalers[select];
  const wave = mode === undefined ? undefined : (width === 16 ? waveModes16 : waveModes8)[mode];
  if (divider === undefined || wave === undefined) return undefined;
  const topRegister = topRegisterOf(timer, wave);
  const top = typeof wave.top === "number" ? wave.top : valueIn(chip, states, topRegister);
  if (top === undefined) return undefined;
  const counts = wave.shape === "up" ? top + 1 : 2 * top;
  return {
    timer,
    mode: wave,
    divider,
    top,
    topRegister,
    periodCycles: counts * divider,
    writes: written.map(({ at }) => visibleRange(at.first, at.last)),
  };
}

function topRegisterOf({ number, compare }: Timer, { top }: WaveMode): string | undefined {
  if (typeof top === "number") return undefined;
  return top === "capture" ? `ICR${number}` : compare[top.channel]?.name;
}

function captureOf(chip: AvrChip, number: number) {
  const register = registerNamed(chip, `ICR${number}`);
  return register === undefined ? [] : [register];
}

/** The number that the bits make, the first the highest; bits that the chip lacks are 0. */
function bitsOf(chip: AvrChip, states: States, names: readonly string[]): number | undefined {
  let value = 0;
  for (const name of names) {
    const place = registerBitNamed(chip, name);
    const state = place && states.get(place.register.name);
    const mask = place === undefined ? 0 : 1 << place.bit;
    if (state !== undefined && (state.bits.known & mask) === 0) return undefined;
    value = value * 2 + (state !== undefined && (state.bits.ones & mask) !== 0 ? 1 : 0);
  }
  return value;
}

/** All of a register, which is 0 after a reset; its two bytes may be written one by one. */
function valueIn(chip: AvrChip, states: States, name: string | undefined): number | undefined {
  if (name === undefined) return undefined;
  const whole = states.get(name);
  const width = registerNamed(chip, name)?.width ?? 8;
  if (whole !== undefined || width === 8) return known(whole, width);
  const low = known(states.get(`${name}L`), 8);
  const high = known(states.get(`${name}H`), 8);
  return low === undefined || high === undefined ? undefined : high * 256 + low;
}

function known(state: RegisterState | undefined, width: number): number | undefined {
  if (state === undefined) return 0;
  const all = 2 ** width - 1;
  return (state.bits.known & all) === all ? state.bits.ones & all : undefined;
}
