import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { avrChipNamed, chipNames } from "../../../../src-core/model/chips.ts";
import { preprocessWith } from "../compilers.ts";
import { readWithStandIns } from "./stand-in-text.ts";

/* `avr/io.h` of avr-libc 2.0, as avr-gcc reads it for each chip: every name of ours is one of its names. */
const chips = chipNames.filter((name) => avrChipNamed(name) !== undefined);

/** `( * ( volatile uint8_t * ) ( ( 0x05 ) + 0x20 ) )` as `8@37`, a sum of numbers as its value, a vector by its function. */
function meaning(expansion: string): string {
  const text = expansion.replace(/\s+/g, "");
  const register = /^\(\*\(volatileuint(8|16)_t\*\)\(?\(?(0x[0-9a-f]+)\)?(?:\+(0x[0-9a-f]+)\))?\)?$/i.exec(
    text,
  );
  if (register !== null) {
    const [, width, address = "", offset = "0"] = register;
    return `${width}@${Number(address) + Number(offset)}`;
  }
  const terms = text.replace(/[()]/g, "").match(/[+-]?(?:0x[0-9a-f]+|\d+)/gi) ?? [];
  if (terms.length === 0 || terms.join("") !== text.replace(/[()]/g, "")) return text;
  return String(
    terms.reduce((sum, term) => sum + Number(term.replace(/^[+-]/, "")) * (term.startsWith("-") ? -1 : 1), 0),
  );
}

describe.each(chips)("avr/io.h for %s", (name) => {
  const unit = readWithStandIns(name, "c", ["avr/io.h"]);
  const names = unit.macros
    .filter(({ definition, parameters }) => definition?.file === "<avr/io.h>" && parameters === undefined)
    .map((macro) => macro.name)
    .filter((each) => each !== "_VECTORS_SIZE");
  const lines = names.map((each) => `"${each}" ${each}\n`).join("");

  test("registers, bits, vectors and memory are those of the real header", () => {
    const folder = mkdtempSync(join(tmpdir(), "avr-io-"));
    writeFileSync(join(folder, "all.c"), `#include <avr/io.h>\n${lines}`);
    const compiler = { name: "avr-gcc", command: "avr-gcc", options: [`-mmcu=${name}`] } as const;
    const { texts } = preprocessWith(compiler, folder, ["all.c"]);
    rmSync(folder, { recursive: true });
    const real = new Map<string, string>();
    for (const [, key = "", value = ""] of (texts.get("all.c") ?? "").matchAll(/"(\w+)"\s+([^"]*)/g)) {
      real.set(key, meaning(value));
    }
    const { tokens } = readWithStandIns(name, "c", ["avr/io.h"], lines);
    const ours = new Map<string, string>();
    let key = "";
    for (const token of tokens) {
      if (token.kind === "string" && token.file === "main.c") key = token.text.slice(1, -1);
      else if (key !== "") ours.set(key, `${ours.get(key) ?? ""} ${token.text}`);
    }
    expect(names.length).toBeGreaterThan(200);
    expect(Object.fromEntries([...ours].map(([each, value]) => [each, meaning(value)]))).toEqual(
      Object.fromEntries(names.map((each) => [each, real.get(each)])),
    );
  });
});
