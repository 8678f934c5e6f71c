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
 * sends, under the user-mode emulator qemu-i386, what the interpreter sends.
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

/** In C, all but those about an AVR (the order in which avr-gcc evaluates included) or more of a C library. */
const others: ReadonlySet<string> = new Set([
  ...[
    "argument-order.c",
    "attributes-and-typeof.c",
    "compiler-functions.c",
    "delay-loops.c",
    "interrupt-handler.c",
    "registers.c",
    "program-memory-tables.c",
  ],
  ...["linked-list.c", "log-helpers.c", "number-text.c", "sorting.c", "string-functions.c"],
]);

/** In C++, those whose objects come and go in an order that the language fixes. */
const inCpp: readonly string[] = [
  ...["anonymous-unions.cpp", "auto.cpp", "bool-and-null.cpp", "class-basics.cpp", "class-templates.cpp"],
  ...["class-with-bit-fields.cpp", "command-table.cpp", "constexpr.cpp", "constructor-order.cpp", "crtp.cpp"],
  ...["declaring-conditions.cpp", "enum-class.cpp", "function-templates.cpp", "hiding-and-using.cpp"],
  ...["lambda-objects.cpp", "lambdas.cpp", "matrix-class.cpp", "member-defaults.cpp", "multiple-bases.cpp"],
  ...["namespaces-nested.cpp", "operator-overloads.cpp", "overloads.cpp", "partial-specialisations.cpp"],
  ...["range-for-classes.cpp", "range-for.cpp", "references.cpp", "scopes.cpp", "static-members.cpp"],
  ...["variadic-logging.cpp", "virtual-functions.cpp"],
];

const namesIn = (folder: string): readonly string[] => readdirSync(join(here, folder)).sort();
const programs = [
  ...namesIn("programs")
    .filter((name) => name.endsWith(".c") && !name.endsWith("-order.c") && !others.has(name))
    .map((name) => ["programs", name] as const),
  ...inCpp.map((name) => ["programs", name] as const),
  ...namesIn("wide/programs").map((name) => ["wide/programs", name] as const),
];

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
