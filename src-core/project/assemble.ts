import type { SettingsRead } from "../notes/settings/read-settings.ts";
import type { Settings, SettingsProblem } from "../notes/settings/settings.ts";
import type { Said } from "../notes/wires.ts";
import { joinPath, nameOf, relativeTo } from "../reader/paths.ts";
import type { SourceHost } from "../reader/source-host.ts";
import { type Folder, foldersIn, readFolderTree } from "./folder-tree.ts";
import { matchesGlob } from "./glob.ts";
import type { Language } from "./languages.ts";
import type { Project, Unit } from "./project.ts";
import { type Chooses, unitsOfFolder } from "./units.ts";

/** Which part of a folder makes the project. */
export type Part =
  /** All below it up to folders that are projects of their own; `within` keeps the units below one folder. */
  | { readonly kind: "tree"; readonly ends: (inner: Folder) => boolean; readonly within?: string }
  /** The folder itself and its `src`. */
  | { readonly kind: "sketch" }
  /** The sketch of one folder, and nothing else. */
  | { readonly kind: "one-sketch"; readonly folder: Folder }
  | { readonly kind: "one-file"; readonly path: string; readonly language: Language };

/** `startName` is what the folder `.` is called; empty where nobody knows. */
export function assembleProject(
  host: SourceHost,
  folder: Folder,
  read: SettingsRead,
  part: Part,
  startName: string,
): Project {
  const { settings } = read;
  const search: UnitSearch = { host, startName };
  const found = findUnits(search, folder, settings, part);
  return {
    root: folder.path,
    settings,
    problems: [...read.problems, ...found.problems],
    units: found.units,
    includePaths: includePathsOf(folder, settings),
    defines: new Map([...settings.defines].map(([name, said]) => [name, said.value])),
  };
}

interface UnitSearch {
  readonly host: SourceHost;
  readonly startName: string;
}

interface UnitsFound {
  readonly units: readonly Unit[];
  readonly problems: readonly SettingsProblem[];
}

function findUnits(search: UnitSearch, folder: Folder, settings: Settings, part: Part): UnitsFound {
  switch (part.kind) {
    case "tree": {
      const found =
        settings.sources === undefined
          ? { units: unitsBelow(search, folder, part.ends, () => true), problems: [] }
          : unitsByGlobs(search, folder, settings.sources, part.ends);
      const { within } = part;
      if (within === undefined) return found;
      return { ...found, units: found.units.filter((unit) => liesWithin(unit, within)) };
    }
    case "sketch": {
      const ends = (each: Folder) => !isBelowSrc(folder, each);
      return { units: unitsBelow(search, folder, ends, () => true), problems: [] };
    }
    case "one-sketch": {
      const [unit] = unitsIn(search, part.folder, () => true);
      return { units: unit === undefined ? [] : [unit], problems: [] };
    }
    case "one-file":
      return { units: [{ mains: [part.path], language: part.language, prelude: [] }], problems: [] };
  }
}

function isBelowSrc(root: Folder, folder: Folder): boolean {
  const [first] = relativeTo(root.path, folder.path).split("/");
  return first === "src";
}

function liesWithin(unit: Unit, folder: string): boolean {
  return unit.mains.some((path) => folder === "." || path.startsWith(`${folder}/`));
}

function unitsBelow(
  search: UnitSearch,
  folder: Folder,
  ends: (inner: Folder) => boolean,
  chooses: Chooses,
): readonly Unit[] {
  const units: Unit[] = [];
  for (const each of foldersIn(folder, (inner) => !ends(inner))) {
    units.push(...unitsIn(search, each, chooses));
  }
  return units;
}

function unitsIn({ host, startName }: UnitSearch, folder: Folder, chooses: Chooses): readonly Unit[] {
  const name = folder.path === "." ? startName : nameOf(folder.path);
  return unitsOfFolder(folder, chooses, name, host);
}

/** A glob that no file fits is a fault: it is more likely misspelt than meant for later. */
function unitsByGlobs(
  search: UnitSearch,
  folder: Folder,
  globs: readonly Said<string>[],
  ends: (inner: Folder) => boolean,
): UnitsFound {
  const fitting = new Set<Said<string>>();
  const chooses = (path: string): boolean => {
    const matching = globs.filter((glob) => matchesGlob(glob.value, relativeTo(folder.path, path)));
    for (const glob of matching) fitting.add(glob);
    return matching.length > 0;
  };
  const units = [...unitsBelow(search, folder, ends, chooses)];
  for (const glob of globs) {
    const outside = unitsOutside(search, folder, glob.value);
    if (outside.length > 0) fitting.add(glob);
    units.push(...outside);
  }
  const problems = globs
    .filter((glob) => !fitting.has(glob))
    .map((glob) => ({
      span: glob.span,
      message: `\`sources\`: no file fits \`${glob.value}\``,
      suggestion: undefined,
    }));
  return { units, problems };
}

/** Units that a glob names with leading `..`. */
function unitsOutside(search: UnitSearch, folder: Folder, glob: string): readonly Unit[] {
  const parts = glob.replace(/^(\.\/+)+/, "").split(/\/+/);
  if (parts[0] !== "..") return [];
  const wild = parts.findIndex((part) => /[*?]/.test(part));
  const fixed = wild < 0 ? parts.length - 1 : wild;
  const base = readFolderTree(search.host, joinPath(folder.path, parts.slice(0, fixed).join("/")));
  const rest = parts.slice(fixed).join("/");
  return unitsBelow(
    search,
    base,
    () => false,
    (path) => matchesGlob(rest, relativeTo(base.path, path)),
  );
}

/** Folders that projects commonly keep headers in, searched after those that edgewise.json names. */
const HEADER_FOLDERS: readonly string[] = ["include", "inc", "src"];

function includePathsOf(folder: Folder, settings: Settings): readonly string[] {
  const said = settings.includePaths.map((path) => joinPath(folder.path, path.value));
  const present = folder.folders.filter((inner) => HEADER_FOLDERS.includes(nameOf(inner.path)));
  return [...new Set([...said, folder.path, ...present.map((inner) => inner.path)])];
}
