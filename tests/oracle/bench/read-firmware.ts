import { readdir, readFile } from "node:fs/promises";
import { basename, join } from "node:path";
import { chip as chipNamed } from "../../../src-core/model/chips.ts";
import type { Program, UnitRequest } from "../../../src-core/reader/program/program.ts";
import { ProgramCache } from "../../../src-core/reader/program/program-cache.ts";
import { readProgram } from "../../../src-core/reader/program/read-program.ts";
import { hostOfFiles } from "../../../src-core/reader/source-host.ts";
import { grammar } from "../../src-core/reader/typed/type-source.ts";

const readGrammar = await grammar();

/** Reads the C sources of a folder, those of `mains` or all of them, as the checker reads them. */
export async function readFirmware(
  folder: string,
  chip: string,
  hz: number,
  mains?: readonly string[],
  defines: Readonly<Record<string, string | number>> = {},
): Promise<Program> {
  const files = await filesOf(folder, /\.[ch]$/);
  const units = (mains ?? Object.keys(files).filter((name) => name.endsWith(".c"))).map((name) => ({
    mains: [name],
    language: "c" as const,
    prelude: [],
  }));
  return readFiles(files, units, chip, hz, { F_CPU: `${hz}UL`, ...defines });
}

/** Reads the sketch in a folder, which has the main tab's name, for the ATmega328P. */
export async function readSketch(folder: string, hz: number): Promise<Program> {
  const files = await filesOf(folder, /\.(ino|h|cpp)$/);
  const names = Object.keys(files).sort();
  const main = `${basename(folder)}.ino`;
  const tabs = [main, ...names.filter((name) => name.endsWith(".ino") && name !== main)];
  const units = [
    { mains: tabs, language: "c++" as const, prelude: ["Arduino.h"] },
    ...names
      .filter((name) => name.endsWith(".cpp"))
      .map((name) => ({ mains: [name], language: "c++" as const, prelude: [] })),
  ];
  return readFiles(files, units, "atmega328p", hz, {});
}

async function filesOf(folder: string, kind: RegExp): Promise<Readonly<Record<string, string>>> {
  const names = (await readdir(folder)).filter((name) => kind.test(name));
  const read = names.map(async (name) => [name, await readFile(join(folder, name), "utf8")] as const);
  return Object.fromEntries(await Promise.all(read));
}

function readFiles(
  files: Readonly<Record<string, string>>,
  units: readonly UnitRequest[],
  chip: string,
  hz: number,
  defines: Readonly<Record<string, string | number>>,
): Program {
  return readProgram({
    host: hostOfFiles(files),
    units,
    chip: chipNamed(chip),
    clockHz: hz,
    defines: new Map(Object.entries(defines).map(([name, value]) => [name, String(value)])),
    includePaths: [],
    grammar: readGrammar,
    cache: new ProgramCache(),
  });
}
