import type { Misstep } from "../../../src-core/interpreter/outcome.ts";
import { LineIndex } from "../../../src-core/present/line-index.ts";
import type { Program } from "../../../src-core/reader/program/program.ts";
import { visibleRange } from "../../../src-core/reader/tokens.ts";
import type { At } from "../../../src-core/reader/typed/nodes.ts";
import { compiledRun } from "./compiled-run.ts";
import { type InterpretedRun, interpretedRun } from "./interpreted-run.ts";
import { mainFiles, type SourceProgram } from "./source-program.ts";

/** A program as the chip runs it beside the program as the interpreter runs it. */
export type Comparison =
  | { readonly kind: "agree"; readonly sent: string; readonly missteps: readonly Misstep[] }
  | { readonly kind: "mismatch"; readonly expected: string; readonly got: string }
  /** `byReader`: some of the program was not understood, so the interpreter alone is not to blame. */
  | { readonly kind: "refused"; readonly message: string; readonly byReader: boolean }
  /** There is no compiled run to compare with. */
  | { readonly kind: "not-comparable"; readonly message: string };

/** Compiles and interprets a program. */
export async function compareRuns(
  source: SourceProgram,
  read: (source: SourceProgram) => Program,
): Promise<Comparison> {
  const compiled = await compiledRun(source);
  if (compiled.kind !== "sent") {
    return { kind: "not-comparable", message: `${compiled.kind}: ${compiled.message}` };
  }
  const expected = compiled.text;
  const interpreted = interpret(source, read);
  if (typeof interpreted === "string") return { kind: "mismatch", expected, got: interpreted };
  if (interpreted.kind === "sent") {
    const { text, missteps } = interpreted;
    return text === expected
      ? { kind: "agree", sent: text, missteps }
      : { kind: "mismatch", expected, got: text };
  }
  const { stop, notUnderstood, text } = interpreted;
  const message = `${stop.message} at ${placeOf(stop.at, source)}`;
  if (stop.reason !== "cannot-run") return { kind: "mismatch", expected, got: `${text} (${message})` };
  const why = [message, ...notUnderstood.slice(0, 3)].join("; ");
  return { kind: "refused", message: why, byReader: notUnderstood.length > 0 };
}

/** An exception, which no program may cause, as its text. */
function interpret(source: SourceProgram, read: (source: SourceProgram) => Program): InterpretedRun | string {
  try {
    return interpretedRun(read(source));
  } catch (error) {
    return `exception: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`;
  }
}

/** `main.c:12:5`, and the line itself where it is in the program. */
export function placeOf(at: At | undefined, source: SourceProgram): string {
  if (at === undefined) return "no place";
  const { file, start } = visibleRange(at.first, at.last);
  const text = file === mainFiles[source.language] ? source.text : source.headers[file];
  if (text === undefined) return file;
  const { line, column } = new LineIndex(text).placeOf(start);
  return `${file}:${line}:${column}: ${(text.split(/\r\n|\r|\n/)[line - 1] ?? "").trim()}`;
}
