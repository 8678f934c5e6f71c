import { readSettings, SETTINGS_FILE, type SettingsRead } from "../notes/settings/read-settings.ts";
import { NO_SETTINGS } from "../notes/settings/settings.ts";
import type { Vocabulary } from "../notes/vocabulary.ts";
import { folderOf, joinPath, nameOf, tidyPath } from "../reader/paths.ts";
import type { SourceHost } from "../reader/source-host.ts";
import { assembleProject, type Part } from "./assemble.ts";
import { type Folder, readFolderTree } from "./folder-tree.ts";
import { languageOfHeader } from "./header-language.ts";
import { isHeader, isSketchFile, unitLanguage } from "./languages.ts";
import type { Project } from "./project.ts";

export interface FindContext {
  /** Names that edgewise.json may use. */
  readonly vocabulary: Vocabulary;
  /** What the folder called `.` is really called, for the order of a sketch's files. */
  readonly startName?: string;
}

/**
 * The projects at `path`, a file or a folder. A folder with edgewise.json is a project with all below it;
 * without one, a folder of `.ino` files is (with its `src`), and so is a folder of C or C++ sources or with a
 * `src` folder or makefile, with all below it. Folders with their own edgewise.json, and sketches not
 * spoken for by one, are projects of their own. A file alone is checked with the settings of the nearest folder
 * above it. Empty where there is nothing to check. Never throws.
 */
export function findProjects(host: SourceHost, path: string, context: FindContext): readonly Project[] {
  const start = tidyPath(path);
  const search: Search = { host, context, projects: [] };
  const tree = readFolderTree(host, start);
  const isFolder = tree.files.length > 0 || tree.folders.length > 0;
  if (!isFolder && host.readText(start) !== undefined) findForFile(search, start);
  else if (tree.files.includes(SETTINGS_FILE)) visit(search, tree);
  else findBelowSettings(search, tree);
  return search.projects;
}

interface Search {
  readonly host: SourceHost;
  readonly context: FindContext;
  readonly projects: Project[];
}

function visit(search: Search, folder: Folder): void {
  if (folder.files.includes(SETTINGS_FILE)) {
    add(search, folder, settingsOf(search, folder.path), { kind: "tree", ends: hasSettings });
    visitNested(search, folder, hasSettings);
  } else if (isSketch(folder)) {
    add(search, folder, NO_SETTINGS_READ, { kind: "sketch" });
    for (const inner of folder.folders) if (nameOf(inner.path) !== "src") visit(search, inner);
  } else if (isPlainProject(folder)) {
    add(search, folder, NO_SETTINGS_READ, { kind: "tree", ends: standsAlone });
    visitNested(search, folder, standsAlone);
  } else {
    for (const inner of folder.folders) visit(search, inner);
  }
}

/** Visits the outermost folders below `folder` that are projects of their own. */
function visitNested(search: Search, folder: Folder, own: (inner: Folder) => boolean): void {
  for (const inner of folder.folders) {
    if (own(inner)) visit(search, inner);
    else visitNested(search, inner, own);
  }
}

/** A folder below one with edgewise.json is checked with those settings, as far as it reaches. */
function findBelowSettings(search: Search, tree: Folder): void {
  const root = rootAbove(search.host, tree.path);
  if (root === undefined) {
    visit(search, tree);
    return;
  }
  const whole = readFolderTree(search.host, root);
  const read = settingsOf(search, root);
  const within = tree.path;
  add(search, whole, read, { kind: "tree", ends: hasSettings, within });
  visitNested(search, tree, hasSettings);
}

function findForFile(search: Search, path: string): void {
  const { host } = search;
  const folder = folderOf(path) ?? ".";
  const root =
    host.readText(joinPath(folder, SETTINGS_FILE)) === undefined ? rootAbove(host, folder) : folder;
  const read = root === undefined ? NO_SETTINGS_READ : settingsOf(search, root);
  const tree = readFolderTree(host, root ?? folder);
  if (isSketchFile(path)) {
    const sketch = readFolderTree(host, folder);
    add(search, tree, read, { kind: "one-sketch", folder: sketch });
    return;
  }
  const language = isHeader(path) ? languageOfHeader(host, path, tree) : unitLanguage(nameOf(path));
  if (language !== undefined) add(search, tree, read, { kind: "one-file", path, language });
}

/** The nearest folder above `path` that has an edgewise.json. */
function rootAbove(host: SourceHost, path: string): string | undefined {
  for (let folder = folderOf(path); folder !== undefined; folder = folderOf(folder)) {
    if (host.readText(joinPath(folder, SETTINGS_FILE)) !== undefined) return folder;
  }
  return undefined;
}

const NO_SETTINGS_READ: SettingsRead = { settings: NO_SETTINGS, problems: [] };

function settingsOf({ host, context }: Search, root: string): SettingsRead {
  const file = joinPath(root, SETTINGS_FILE);
  const text = host.readText(file);
  if (text !== undefined) return readSettings(file, text, context.vocabulary);
  const span = { file, start: 0, end: 0 };
  return {
    settings: { ...NO_SETTINGS, file },
    problems: [{ span, message: "the file cannot be read", suggestion: undefined }],
  };
}

function add({ host, context, projects }: Search, folder: Folder, read: SettingsRead, part: Part): void {
  const project = assembleProject(host, folder, read, part, context.startName ?? "");
  if (project.units.length > 0 || project.problems.length > 0) projects.push(project);
}

function hasSettings(folder: Folder): boolean {
  return folder.files.includes(SETTINGS_FILE);
}

function isSketch(folder: Folder): boolean {
  return folder.files.some((name) => isSketchFile(name));
}

function standsAlone(folder: Folder): boolean {
  return hasSettings(folder) || isSketch(folder);
}

/** Files that stand at the root of a project whose sources lie in folders below. */
const ROOT_FILES: ReadonlySet<string> = new Set(["makefile", "gnumakefile", "cmakelists.txt"]);

function isPlainProject(folder: Folder): boolean {
  if (folder.files.some((name) => unitLanguage(name) !== undefined)) return true;
  if (folder.files.some((name) => ROOT_FILES.has(name.toLowerCase()))) return true;
  return folder.folders.some((inner) => nameOf(inner.path) === "src");
}
