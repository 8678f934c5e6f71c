import type { Unit } from "../../finding.ts";
import type { Confidence, Source } from "../sources.ts";

/** The bounds that one source gives, in the quantity's unit. */
export interface Figure {
  readonly min?: number;
  readonly typical?: number;
  readonly max?: number;
}

/** A figure that differs from the one the model checks against. */
export interface OtherFigure extends Figure {
  /** What the figure is of, where it is not quite the same thing. */
  readonly note: string;
  readonly sources: readonly Source[];
  readonly confidence: Confidence;
}

/**
 * A number with a unit that both protocols are made of. Its id is what `@wire means` names.
 * `min` and `max` are met when they are reached.
 */
export interface Quantity extends Figure {
  /** `ps2.request-hold`. */
  readonly id: string;
  /** A few words: "clock hold before sending". */
  readonly title: string;
  /** One sentence that a newcomer understands. */
  readonly meaning: string;
  /**
   * `setting`: the firmware chooses it, and `min` to `max` (or `values`) is what it may choose.
   * `figure`: a property of the mouse, the PC or the wire that the firmware has to live with.
   */
  readonly kind: "setting" | "figure";
  readonly unit: Unit;
  /** The only values there are, where they are a list. */
  readonly values?: readonly number[];
  /** Where `min`, `typical`, `max` and `values` come from. */
  readonly sources: readonly Source[];
  readonly confidence: Confidence;
  /** Where sources disagree: the figures that were not chosen. The chosen one is the stricter. */
  readonly disagreement?: readonly OtherFigure[];
  /** Ids of rules that check against it. */
  readonly rules: readonly string[];
}
