import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Span } from "../../src-core/finding.ts";
import type { Edit, Line, PlantedFault, Style } from "./planted/planted-fault.ts";

/** Files of a style by their names. */
export type Files = Readonly<Record<string, string>>;

export function folderOf(style: Style): string {
  return fileURLToPath(new URL(`${style}/`, import.meta.url));
}

export function filesOf(style: Style): Files {
  const folder = folderOf(style);
  return Object.fromEntries(
    readdirSync(folder).map((name) => [name, readFileSync(`${folder}${name}`, "utf8")]),
  );
}

/** The files of a style with the fault in them. Throws where a text to replace does not stand there just once. */
export function wrongVersion({ style, edits }: PlantedFault): Files {
  return edits.reduce(edited, filesOf(style));
}

function edited(files: Files, { file, find, put }: Edit): Files {
  const parts = (files[file] ?? "").split(find);
  if (parts.length !== 2) throw new Error(`${file} has ${parts.length - 1} times: ${find}`);
  return { ...files, [file]: parts.join(put) };
}

/** Number of the line, from 1. Throws where there is none. */
export function numberOf({ file, text, after }: Line, files: Files): number {
  const source = files[file] ?? "";
  const from = after === undefined ? 0 : source.indexOf(after);
  const at = from < 0 ? -1 : source.indexOf(text, from);
  if (at < 0) throw new Error(`${file} has no line with: ${text}`);
  return lineAt(source, at);
}

/** Number of the line that an offset is in, from 1. */
export function lineAt(source: string, offset: number): number {
  return source.slice(0, offset).split("\n").length;
}

/** `file:line` of where a finding stands. */
export function placeOf(span: Span | undefined, files: Files): string {
  return span === undefined ? "nowhere" : `${span.file}:${lineAt(files[span.file] ?? "", span.start)}`;
}
