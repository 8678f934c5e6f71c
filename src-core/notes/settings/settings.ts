import type { RuleLevel, Span } from "../../finding.ts";
import type { Button } from "../note.ts";
import { NO_WIRES, type Said, type Wires } from "../wires.ts";

/** What edgewise.json says, every value with its place. What it does not say is undefined or empty. */
export interface Settings {
  /** Path of the file; undefined for a project without one. */
  readonly file: string | undefined;
  readonly wires: Wires;
  /** Globs relative to the project's root; undefined for every source file. */
  readonly sources: readonly Said<string>[] | undefined;
  /** Macro name to its replacement text. */
  readonly defines: ReadonlyMap<string, Said<string>>;
  /** Folders relative to the project's root. */
  readonly includePaths: readonly Said<string>[];
  /** Rule id to its level. */
  readonly rules: ReadonlyMap<string, Said<RuleLevel>>;
  readonly simulate: SimulateSettings;
}

/** Names of what a matrix is made of; empty for the usual ones. */
export interface SimulateSettings {
  readonly strokes: readonly Said<string>[];
  readonly mice: readonly Said<string>[];
  readonly pcs: readonly Said<string>[];
  /** The project's own sample movements, by name. */
  readonly ownStrokes: ReadonlyMap<string, Said<readonly OwnStrokeStep[]>>;
}

/** Buttons change at once, then the mouse moves evenly for so many milliseconds; 0 for at once. */
export interface OwnStrokeStep {
  readonly ms: number;
  /** Counts to the right; negative is left. */
  readonly right: number;
  /** Counts downwards on the screen; negative is up. */
  readonly down: number;
  /** Steps of the wheel towards the user. */
  readonly wheel: number;
  readonly press: readonly Button[];
  readonly release: readonly Button[];
}

/** One fault of edgewise.json. */
export interface SettingsProblem {
  readonly span: Span;
  /** What is wrong and what would be right, in one line. */
  readonly message: string;
  /** JSON text to put in the place of `span`; undefined where nothing can be proposed. */
  readonly suggestion: string | undefined;
}

export const NO_SETTINGS: Settings = {
  file: undefined,
  wires: NO_WIRES,
  sources: undefined,
  defines: new Map(),
  includePaths: [],
  rules: new Map(),
  simulate: { strokes: [], mice: [], pcs: [], ownStrokes: new Map() },
};
