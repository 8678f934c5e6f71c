import { readdirSync, readFileSync } from "node:fs";
import { hostOfFiles } from "../../../../src-core/reader/source-host.ts";
import { createService } from "../../../../src-core/service/create-service.ts";
import { loadGrammar } from "../../reader/syntax/load-grammar.ts";

const grammar = await loadGrammar();

/** What stands in a file of a sample, and what stands there instead. */
export type Edit = readonly [file: string, from: string, to: string];

export interface Around {
  readonly stroke?: string;
  readonly mouse?: string;
  readonly pc?: string;
}

/** A fault as the run tells it: its rule and the line it is told at, without indentation; `nowhere` for none. */
export interface Told {
  readonly rule: string;
  readonly line: string;
  readonly message: string;
}

/** Runs a firmware of the sample workspace in which something was changed. Throws where an edit finds nothing to change. */
export function runEdited(sample: string, edits: readonly Edit[], around: Around = {}): readonly Told[] {
  return runFiles(edited(sample, edits), around, sample);
}

export function edited(sample: string, edits: readonly Edit[]): Readonly<Record<string, string>> {
  const folder = `sample-workspace/${sample}`;
  const files = Object.fromEntries(
    readdirSync(folder).map((file) => [file, readFileSync(`${folder}/${file}`, "utf8")]),
  );
  for (const [file, from, to] of edits) {
    const text = files[file];
    if (text?.includes(from) !== true) throw new Error(`${file} has no ${from}`);
    files[file] = text.replace(from, to);
  }
  return files;
}

export function runFiles(
  files: Readonly<Record<string, string>>,
  { stroke = "circle", mouse = "plain", pc = "rts-toggle" }: Around,
  name: string,
): readonly Told[] {
  const service = createService({ host: hostOfFiles(files), grammar, startName: name });
  const [project] = service.projectsAt(".");
  const { outcomes } = service.runCell(project?.id ?? "", { mouse, pc, strokes: [stroke], seed: 1 });
  const [result] = outcomes;
  if (result?.kind !== "run") throw new Error(result?.message);
  return result.run.verdict.failures.map(({ rule, message, span }) => ({
    rule,
    message,
    line: span === undefined ? "nowhere" : lineAt(files[span.file] ?? "", span.start),
  }));
}

function lineAt(text: string, offset: number): string {
  const start = text.lastIndexOf("\n", offset - 1) + 1;
  const end = text.indexOf("\n", offset);
  return text.slice(start, end < 0 ? undefined : end).trim();
}
