import type { Span } from "../finding.ts";

/**
 * What the author said about the adapter, in wire notes and edgewise.json, after merging: a note wins over
 * edgewise.json. What nobody said is undefined; facts then infer it from the code.
 */

/** A value and where it was said. */
export interface Said<T> {
  readonly value: T;
  readonly span: Span;
}

export interface BoardWords {
  /** Canonical chip name of the model, such as `atmega328p`. */
  readonly chip: Said<string> | undefined;
  readonly clockHz: Said<number> | undefined;
}

export interface Ps2Words {
  /** Board number (`2`, `A3`) or port bit (`PD2`), as written. */
  readonly clock: Said<string> | undefined;
  readonly data: Said<string> | undefined;
  readonly pullups: Said<"internal" | "external"> | undefined;
}

export interface SerialWords {
  readonly uart: Said<number> | undefined;
  readonly tx: Said<string> | undefined;
  readonly rts: Said<string> | undefined;
  readonly dtr: Said<string> | undefined;
  /** Layout id of the model. */
  readonly report: Said<string> | undefined;
  readonly shifter: Said<"inverting" | "none"> | undefined;
  readonly baud: Said<number> | undefined;
  /** `7N1`. */
  readonly line: Said<string> | undefined;
  /** Counts of x and y out per count in, above zero. */
  readonly scale: Said<number> | undefined;
}

export interface Wires {
  readonly board: BoardWords;
  readonly ps2: Ps2Words;
  readonly serial: SerialWords;
}

/** Nobody said anything. */
export const NO_WIRES: Wires = {
  board: { chip: undefined, clockHz: undefined },
  ps2: { clock: undefined, data: undefined, pullups: undefined },
  serial: {
    uart: undefined,
    tx: undefined,
    rts: undefined,
    dtr: undefined,
    report: undefined,
    shifter: undefined,
    baud: undefined,
    line: undefined,
    scale: undefined,
  },
};
