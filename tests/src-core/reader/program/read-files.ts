import type { Chip } from "../../../../src-core/model/chips/chip.ts";
import { chip } from "../../../../src-core/model/chips.ts";
import type { Program, UnitRequest } from "../../../../src-core/reader/program/program.ts";
import { ProgramCache } from "../../../../src-core/reader/program/program-cache.ts";
import { readProgram } from "../../../../src-core/reader/program/read-program.ts";
import { hostOfFiles, type SourceHost } from "../../../../src-core/reader/source-host.ts";
import { grammar } from "../typed/type-source.ts";

/** One unit for each C and C++ file, one for all `.ino` files. */
function unitsOf(files: readonly string[]): UnitRequest[] {
  const sketch = files.filter((file) => file.endsWith(".ino"));
  const units: UnitRequest[] =
    sketch.length > 0 ? [{ mains: sketch, language: "c++", prelude: ["Arduino.h"] }] : [];
  for (const file of files) {
    if (file.endsWith(".c")) units.push({ mains: [file], language: "c", prelude: [] });
    if (file.endsWith(".cpp")) units.push({ mains: [file], language: "c++", prelude: [] });
  }
  return units;
}

function knownChip(name: string): Chip {
  const found = chip(name);
  if (found === undefined) throw new Error(`no chip ${name}`);
  return found;
}

/** Reads files as a project for an ATmega328P at 16 MHz with the built-in headers. */
export async function readFiles(
  files: Readonly<Record<string, string>>,
  cache: ProgramCache = new ProgramCache(),
  host: SourceHost = hostOfFiles(files),
): Promise<Program> {
  return readProgram({
    host,
    units: unitsOf(Object.keys(files)),
    chip: knownChip("atmega328p"),
    clockHz: 16_000_000,
    defines: new Map(),
    includePaths: [],
    grammar: await grammar(),
    cache,
  });
}

export interface Marked {
  readonly text: string;
  /** Where the `|` stood. */
  readonly offset: number;
}

/** Takes the cursor, a `|` between two `$`, out of a text. */
export function marked(text: string): Marked {
  const offset = text.indexOf("$|$");
  if (offset < 0) throw new Error("no cursor in the text");
  return { text: text.replace("$|$", ""), offset };
}
