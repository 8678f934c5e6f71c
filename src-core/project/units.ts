import { joinPath, nameOf } from "../reader/paths.ts";
import type { SourceHost } from "../reader/source-host.ts";
import type { Folder } from "./folder-tree.ts";
import { isSketchFile, unitLanguage } from "./languages.ts";
import type { Unit } from "./project.ts";

/** The header that sketch tools include before a sketch. */
const SKETCH_PRELUDE = "Arduino.h";

/** Which files of a folder take part, by path. */
export type Chooses = (path: string) => boolean;

/** The units of one folder: its sketch, if it has one, then each C and C++ file. */
export function unitsOfFolder(
  folder: Folder,
  chooses: Chooses,
  sketchName: string,
  host: SourceHost,
): Unit[] {
  const paths = folder.files.map((name) => joinPath(folder.path, name)).filter(chooses);
  const units: Unit[] = [];
  const sketch = inSketchOrder(
    paths.filter((path) => isSketchFile(path)),
    sketchName,
    host,
  );
  if (sketch.length > 0) units.push({ mains: sketch, language: "c++", prelude: [SKETCH_PRELUDE] });
  for (const path of paths) {
    const language = unitLanguage(nameOf(path));
    if (language !== undefined) units.push({ mains: [path], language, prelude: [] });
  }
  return units;
}

/**
 * The file named like its folder first, then the rest by name. Where the folder's name is not known, the file
 * that defines `setup` takes the first place.
 */
function inSketchOrder(files: readonly string[], sketchName: string, host: SourceHost): readonly string[] {
  const named = files.find((path) => stemOf(path) === sketchName);
  const first = named ?? (sketchName === "" ? files.find((path) => definesSetup(host, path)) : undefined);
  if (first === undefined) return files;
  return [first, ...files.filter((path) => path !== first)];
}

function stemOf(path: string): string {
  return nameOf(path).replace(/\.[^.]*$/, "");
}

function definesSetup(host: SourceHost, path: string): boolean {
  return /\bvoid\s+setup\s*\(/.test(host.readText(path) ?? "");
}
