import type { Settings, SettingsProblem } from "../notes/settings/settings.ts";
import type { Language } from "./languages.ts";

/** Sources that are checked together, with the settings that hold for them. */
export interface Project {
  /** The folder, as the `SourceHost` knows it. */
  readonly root: string;
  readonly settings: Settings;
  /** Faults of its edgewise.json; not empty means that the file is broken. */
  readonly problems: readonly SettingsProblem[];
  /** In order of their first main file. */
  readonly units: readonly Unit[];
  /** Folders for `#include <...>` and, after the including file's own, `#include "..."`; in search order. */
  readonly includePaths: readonly string[];
  /** Macros given from outside: name to replacement text. */
  readonly defines: ReadonlyMap<string, string>;
}

/** One translation unit. */
export interface Unit {
  /** Files read one after the other: one, or all `.ino` files of a sketch. */
  readonly mains: readonly string[];
  readonly language: Language;
  /** Headers included before the first main file; sketches get their core's header. */
  readonly prelude: readonly string[];
}
