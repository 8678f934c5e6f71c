import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Grammar } from "../../../src-core/reader/syntax/grammar/grammar.ts";
import type { ChunkSyntax } from "../../../src-core/reader/syntax/nodes.ts";
import { parseUnit } from "../../../src-core/reader/syntax/parse-unit.ts";
import { SyntaxCache } from "../../../src-core/reader/syntax/syntax-cache.ts";
import { tokenize } from "../../src-core/reader/syntax/tokenize.ts";
import { sourceOfDeclaration } from "./unparse-declarations.ts";

export type Language = "c" | "c++";

export interface Compiler {
  readonly command: string;
  readonly flags: readonly string[];
  readonly language: Language;
}

/** Runs a command; throws with what it said where it fails. */
function run(command: string, args: readonly string[], input = ""): string {
  const { status, stdout, stderr } = spawnSync(command, args, {
    input,
    encoding: "utf8",
    maxBuffer: 1 << 28,
  });
  if (status !== 0) throw new Error(`${command} ${args.join(" ")}\n${stderr.slice(0, 2_000)}`);
  return stdout;
}

export const preprocessed = (compiler: Compiler, file: string): string =>
  run(compiler.command, [...compiler.flags, "-E", "-P", "-x", compiler.language, file]).replace(
    /^\s*#.*$/gm,
    "",
  );

/** Assembly without what names files and lines. */
export function assembled(compiler: Compiler, source: string): string {
  const args = [...compiler.flags, "-w", "-O1", "-S", "-fno-ident", "-x", compiler.language, "-", "-o", "-"];
  return run(compiler.command, args, source).replace(/^\s*(?:\.file.*|[;#].*)$/gm, "");
}

/** What the program prints. */
export function printed(compiler: Compiler, source: string): string {
  const folder = mkdtempSync(join(tmpdir(), "grouping-"));
  try {
    const program = join(folder, "program");
    run(
      compiler.command,
      [...compiler.flags, "-w", "-fwrapv", "-x", compiler.language, "-", "-o", program],
      source,
    );
    return run(program, []);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

export interface Rewritten {
  readonly source: string;
  readonly syntax: ChunkSyntax;
}

/** The text read and written again, with parentheses that say how it was understood. */
export function rewritten(grammar: Grammar, language: Language, text: string): Rewritten {
  const tokens = tokenize(text);
  const [parsed] = parseUnit([{ tokens }], language, grammar, new SyntaxCache());
  if (parsed === undefined) throw new Error("no chunk");
  const context = { language, tokens, inTemplate: 0 };
  const source = parsed.syntax.declarations.map((each) => sourceOfDeclaration(context, each)).join("\n");
  return { source, syntax: parsed.syntax };
}
