/** Levels of some wires over time, to be drawn. Times are in units of the diagram's own, 0 at the left. */
export interface WaveDiagram {
  readonly title: string;
  /** One or two sentences that say what a reader sees, also for those who do not. */
  readonly description: string;
  readonly length: number;
  readonly lanes: readonly Lane[];
}

export interface Lane {
  readonly name: string;
  /** What the two levels are called, where they are not high and low. */
  readonly levelNames?: readonly [high: string, low: string];
  /** In order of time; the first is at 0. */
  readonly steps: readonly Step[];
  /** Words under stretches of the lane: names of bits. */
  readonly cells: readonly Stretch[];
  /** Lengths that a document limits, each drawn as a dimension line of its own. */
  readonly measures: readonly Stretch[];
}

export interface Step {
  readonly at: number;
  readonly level: 0 | 1;
  readonly driver: Driver;
}

/** Who holds the wire: nobody where a pull-up does. */
export type Driver = "mouse" | "host" | "nobody" | "adapter" | "PC";

export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}
