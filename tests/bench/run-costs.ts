import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createMachine } from "../../src-core/interpreter/create-machine.ts";
import type { Clock } from "../../src-core/interpreter/outcome.ts";
import type { Grammar } from "../../src-core/reader/syntax/grammar/grammar.ts";
import { compile } from "../oracle/interpreter/compile.ts";
import { runImage } from "../oracle/interpreter/compiled-run.ts";
import { sourceReader } from "../oracle/interpreter/read-source.ts";
import { endOfTransmission, type SourceProgram, targetOf } from "../oracle/interpreter/source-program.ts";
import { isInstalled } from "./is-installed.ts";
import { inTurn, median } from "./measure.ts";

/** The encoders, and what each is an example of. */
const encoders = [
  ["bytes-and-clipping", "bytes by shifts and masks, clipped"],
  ["bit-field-union", "bit-fields behind a union"],
  ["table-driven", "a loop over a table"],
  ["checksum", "a checksum, bit by bit"],
] as const;

/** Operations in a turn of the inner loop of `operations.c`, which counts them. */
const operationsInTurn = 18;
/** Turns of the inner loop of each program. */
const turnsInRow = 256;

/** How much is measured: repetitions, and how often each program goes through its inner loop. */
export interface Amount {
  readonly rounds: number;
  readonly rows: number;
}

/** `work(rows)` of one program: its milliseconds, once it is known that it makes what the others make. */
interface Runner {
  readonly work: () => number;
  readonly result: number;
}

/** One way to run a program. */
type Way = (source: SourceProgram, rows: number) => Promise<Runner>;

/** The interpreter beside compiled code, as a table; `leftOut` names compilers that are not there. */
export async function runCosts(
  grammar: Grammar,
  amount: Amount,
): Promise<{ readonly text: string; readonly leftOut: readonly string[] }> {
  const scratch = mkdtempSync(join(tmpdir(), "bench-"));
  try {
    const beside = [
      { compiler: "gcc", head: "gcc -O0", way: hostCode(scratch) },
      { compiler: "avr-gcc", head: "avr-gcc -Os on avr8js", way: simulatedCode },
    ];
    const leftOut = beside.filter(({ compiler }) => !isInstalled(compiler)).map(({ compiler }) => compiler);
    const columns = [
      { head: "interpreter", way: interpreter(grammar, undefined) },
      { head: "counting cycles", way: interpreter(grammar, countingClock) },
      ...beside.filter(({ compiler }) => !leftOut.includes(compiler)),
    ];
    const missing = leftOut.map((compiler) => `${compiler} is not installed: its column is left out\n`);
    return { text: (await table(columns, amount)) + missing.join(""), leftOut };
  } finally {
    rmSync(scratch, { recursive: true });
  }
}

async function table(
  columns: readonly { readonly head: string; readonly way: Way }[],
  amount: Amount,
): Promise<string> {
  const inputs = amount.rows * turnsInRow;
  const ways = columns.map(({ way }) => way);
  const lines: string[] = [];
  for (const [name, what] of encoders) {
    const times = await timesOf(programNamed(name), ways, amount);
    const cells = times.map((time) => cell(time / inputs, time / (times[0] ?? time)));
    lines.push(what.padEnd(firstWidth) + cells.join(""));
  }
  const rows = amount.rows * 16;
  const [operations = 0] = await timesOf(programNamed("operations"), ways.slice(0, 1), { ...amount, rows });
  const perSecond = (rows * turnsInRow * operationsInTurn * 1000) / operations;
  const heads = columns.map(({ head }) => head.padStart(columnWidth));
  return `
The interpreter does ${(perSecond / 1e6).toFixed(0)} million operations a second.

${inputs} inputs, ${amount.rounds} rounds, the ways in turn: median for an input, and beside the interpreter
${"".padEnd(firstWidth)}${heads.join("")}
${lines.join("\n")}
`;
}

const firstWidth = 36;
const columnWidth = 24;

function cell(milliseconds: number, ratio: number): string {
  return `${(milliseconds * 1e6).toFixed(0)} ns ${ratio.toFixed(2).padStart(6)} x`.padStart(columnWidth);
}

/** Median milliseconds of `work` in each way; it must return the same in all. */
async function timesOf(
  source: SourceProgram,
  ways: readonly Way[],
  { rounds, rows }: Amount,
): Promise<readonly number[]> {
  const runners: Runner[] = [];
  for (const way of ways) runners.push(await way(source, rows));
  const results = new Set(runners.map(({ result }) => result));
  if (results.size !== 1) throw new Error(`different results: ${[...results].join(", ")}\n${source.text}`);
  return inTurn(
    rounds,
    runners.map(({ work }) => work),
  ).map(median);
}

const folder = "tests/bench/encoders";

function programNamed(name: string): SourceProgram {
  return {
    language: "c",
    text: readFileSync(join(folder, `${name}.c`), "utf8"),
    headers: { "work.h": readFileSync(join(folder, "work.h"), "utf8") },
  };
}

/** Asked every millisecond of a chip at 16 MHz, about as often as something happens on the wires. */
const countingClock: Clock = {
  budget: () => 16_000,
  pass: () => true,
  happened: () => 0,
  runsEveryTurn: true,
};

function interpreter(grammar: Grammar, clock: Clock | undefined): Way {
  const read = sourceReader(grammar);
  return async (source, rows) => {
    const program = read(source);
    const machine = createMachine({
      program,
      limits: { steps: Number.MAX_SAFE_INTEGER, depth: 100 },
      registers: undefined,
      outside: undefined,
      instead: undefined,
      clock,
      cancelled: undefined,
    });
    machine.reset();
    const work = program.functions.find(({ name }) => name === "work");
    if (work === undefined) throw new Error(`no work() in\n${source.text}`);
    const call = (): number => {
      const outcome = machine.call(work, [rows]);
      if (outcome.kind === "stopped") throw new Error(outcome.stop.message);
      return Number(outcome.value);
    };
    const result = call();
    if (machine.missteps.length > 0) throw new Error(machine.missteps.map(({ message }) => message).join());
    return { result, work: () => timed(call) };
  };
}

/** Compiled for this machine without optimisation, in a folder for scratch; the program takes its own time. */
function hostCode(scratch: string): Way {
  return async ({ text, headers }, rows) => {
    const folder = mkdtempSync(join(scratch, "host-"));
    for (const [name, header] of Object.entries(headers)) writeFileSync(join(folder, name), header);
    writeFileSync(join(folder, "main.c"), text + hostMain(rows));
    const program = join(folder, "program");
    execFileSync("gcc", ["-O0", "-w", "-o", program, join(folder, "main.c")]);
    const run = () => execFileSync(program, { encoding: "utf8" }).split(" ").map(Number);
    return { result: run()[0] ?? Number.NaN, work: () => (run()[1] ?? Number.NaN) / 1e6 };
  };
}

const hostMain = (rows: number): string => `
#include <stdio.h>
#include <time.h>
int main(void)
{
    struct timespec start, end;
    clock_gettime(CLOCK_MONOTONIC, &start);
    unsigned sum = work(${rows});
    clock_gettime(CLOCK_MONOTONIC, &end);
    printf("%u %lld", sum, (end.tv_sec - start.tv_sec) * 1000000000LL + end.tv_nsec - start.tv_nsec);
    return 0;
}
`;

/** Compiled for AVR as firmware is, and run on a simulated chip. */
const simulatedCode: Way = async (source, rows) => {
  const whole = { ...source, text: source.text + chipMain(rows) };
  const image = await compile(whole, "-Os");
  if (image.kind === "not-compiled") throw new Error(image.message);
  const run = (): number => {
    const outcome = runImage(image, targetOf(whole).ramBytes, Number.MAX_SAFE_INTEGER);
    if (outcome.kind !== "sent") throw new Error(outcome.message);
    return Number.parseInt(outcome.text, 16);
  };
  return { result: run(), work: () => timed(run) };
};

const chipMain = (rows: number): string => `
#include <avr/io.h>
int main(void)
{
    volatile uint16_t rows = ${rows};
    uint16_t sum = work(rows);
    for (uint8_t digits = 4; digits > 0; digits--) {
        uint8_t digit = sum >> 12;
        UDR0 = digit < 10 ? '0' + digit : 'A' - 10 + digit;
        sum <<= 4;
    }
    UDR0 = ${endOfTransmission};
    for (;;) {
    }
}
`;

function timed(work: () => unknown): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}
