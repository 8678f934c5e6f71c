import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { createMachine } from "../../../../src-core/interpreter/create-machine.ts";
import type { OutsideFunction } from "../../../../src-core/interpreter/outcome.ts";
import { chip } from "../../../../src-core/model/chips.ts";
import type { Program } from "../../../../src-core/reader/program/program.ts";
import { ProgramCache } from "../../../../src-core/reader/program/program-cache.ts";
import { readProgram } from "../../../../src-core/reader/program/read-program.ts";
import { hostOfFiles } from "../../../../src-core/reader/source-host.ts";
import { grammar } from "../../../src-core/reader/typed/type-source.ts";
import { endOfTransmission, mainFiles, type SourceProgram } from "../source-program.ts";
import { wideRun } from "./wide-run.ts";

/*
 * Chips of other families: `int` and pointers of 32 bits, natural alignment. What the host's compiler makes for 32 bits
 * sends what the interpreter sends.
 */
const here = "tests/oracle/interpreter";
const portHeader = readFileSync(join(here, "port.h"), "utf8")
  .replace("#include <avr/io.h>\n", "")
  .replace(/static inline void send\(uint8_t byte\)\n\{.*?\n\}\n/s, declaration());
const headers = { "port.h": portHeader };
const parse = await grammar();
const caches = { c: new ProgramCache(), "c++": new ProgramCache(), sketch: new ProgramCache() };

function declaration(): string {
  return '#ifdef __cplusplus\nextern "C"\n#endif\nvoid send(uint8_t byte);\n';
}

function read({ language, text }: SourceProgram): Program {
  const main = mainFiles[language];
  return readProgram({
    host: hostOfFiles({ ...headers, [main]: text }),
    units: [{ mains: [main], language: language === "c" ? "c" : "c++", prelude: [] }],
    chip: chip("atsamd21g18"),
    clockHz: undefined,
    defines: new Map(),
    includePaths: [],
    grammar: parse,
    cache: caches[language],
  });
}

function interpreted(program: Program): string {
  const sent: number[] = [];
  let ended = false;
  const send: OutsideFunction = ({ name }) =>
    name !== "send"
      ? undefined
      : ([byte]) => {
          ended ||= byte === endOfTransmission;
          if (!ended) sent.push(Number(byte));
          return undefined;
        };
  const machine = createMachine({
    program,
    limits: { steps: 50_000_000, depth: 400 },
    registers: undefined,
    outside: send,
    instead: undefined,
    cancelled: undefined,
  });
  const symbol = program.functions.find(({ name }) => name === "main");
  const begun = machine.reset();
  const outcome = symbol === undefined || begun.kind === "stopped" ? begun : machine.call(symbol, []);
  if (outcome.kind === "stopped" && !ended) return outcome.stop.message;
  return String.fromCharCode(...sent);
}

/** Programs that are about an AVR or its 16-bit addresses, or need more of a C library than support.c has. */
const others: ReadonlySet<string> = new Set([
  ...["casts.cpp", "delay-loops.c", "interrupt-handler.c", "pin-template.cpp", "registers.c"],
  ...["program-memory-class.cpp", "program-memory-tables.c"],
  ...[
    "linked-list.c",
    "log-helpers.c",
    "logging-class.cpp",
    "number-text.c",
    "sorting.c",
    "string-functions.c",
  ],
]);

const folders = ["programs", "wide/programs"];
const programs = folders.flatMap((folder) =>
  readdirSync(join(here, folder))
    .filter((name) => !others.has(name))
    .sort()
    .map((name) => [folder, name] as const),
);

describe("sends what the host's 32-bit program sends", () => {
  test.each(programs)("%s/%s", async (folder, name) => {
    const text = readFileSync(join(here, folder, name), "utf8");
    const language = name.endsWith(".cpp") ? "c++" : "c";
    const program: SourceProgram = { language, text, headers };
    const expected = await wideRun(program);
    expect(expected.length).toBeGreaterThan(10);
    expect(interpreted(read(program))).toBe(expected);
  });
});
