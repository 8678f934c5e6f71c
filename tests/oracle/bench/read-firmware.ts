import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { chip as chipNamed } from "../../../src-core/model/chips.ts";
import type { Program } from "../../../src-core/reader/program/program.ts";
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
  const names = (await readdir(folder)).filter((name) => /\.[ch]$/.test(name));
  const files = await Promise.all(
    names.map(async (name) => [name, await readFile(join(folder, name), "utf8")] as const),
  );
  return readProgram({
    host: hostOfFiles(Object.fromEntries(files)),
    units: (mains ?? names.filter((name) => name.endsWith(".c"))).map((name) => ({
      mains: [name],
      language: "c",
      prelude: [],
    })),
    chip: chipNamed(chip),
    clockHz: hz,
    defines: new Map([
      ["F_CPU", `${hz}UL`],
      ...Object.entries(defines).map(([name, value]) => [name, String(value)] as const),
    ]),
    includePaths: [],
    grammar: readGrammar,
    cache: new ProgramCache(),
  });
}
