import type { MatrixCell, MatrixResult } from "../../matrix-result.ts";
import { countCells, firstTrouble, type Trouble, troubleOf } from "../../matrix-verdict.ts";
import type { FileLines } from "../line-index.ts";
import { detailsAsText, failureAsText, stopAsText } from "./failure-as-text.ts";
import type { Paint, Role } from "./paint.ts";

/** A matrix for a reader at a terminal: a table of what works, what went wrong first in each run that failed, and the sum. */
export function matrixAsText(project: string, result: MatrixResult, lines: FileLines, paint: Paint): string {
  return `${[
    heading(project, result, paint),
    table(result, paint),
    ...faults(result).map((fault) => faultAsText(fault, lines, paint)),
    summary(result, paint),
  ].join("\n\n")}\n`;
}

function heading(project: string, { plan, seed, shard }: MatrixResult, paint: Paint): string {
  const rows: [string, string][] = [
    ["strokes", plan.strokes.map(({ name }) => name).join(", ")],
    ["seed", String(seed)],
  ];
  if (shard !== undefined) rows.push(["shard", `${shard.part} of ${shard.parts}`]);
  return [
    paint("file", project),
    ...rows.map(([label, text]) => `  ${paint("label", label.padEnd(7))} ${text}`),
  ].join("\n");
}

interface Mark {
  readonly text: string;
  readonly role: Role;
}

/** Mice down, PCs across. */
function table({ plan, cells }: MatrixResult, paint: Paint): string {
  const marks = new Map(cells.map((cell) => [cellKey(cell), markOf(firstTrouble(cell)?.trouble)]));
  const left = plan.mice.map(({ name }): Mark => ({ text: name, role: "label" }));
  const columns = plan.pcs.map(({ name }): readonly Mark[] => [
    { text: name, role: "label" },
    ...plan.mice.map((mouse) => marks.get(cellKey({ mouse: mouse.name, pc: name })) ?? elsewhere),
  ]);
  const all = [[{ text: "", role: "label" } satisfies Mark, ...left], ...columns];
  const widths = all.map((column) => Math.max(...column.map(({ text }) => text.length)));
  return ["", ...plan.mice]
    .map((_, row) => {
      const last = all.length - 1;
      const painted = all.map((column, at) => {
        const { text, role } = column[row] ?? elsewhere;
        const padding = at === last ? "" : " ".repeat((widths[at] ?? 0) - text.length);
        return text === "" ? padding : paint(role, text) + padding;
      });
      return `  ${painted.join("  ")}`;
    })
    .join("\n");
}

/** A cell of another shard. */
const elsewhere: Mark = { text: "-", role: "label" };

function markOf(trouble: Trouble | undefined): Mark {
  switch (trouble?.kind) {
    case undefined:
      return { text: "ok", role: "good" };
    case "failure":
      return { text: `x ${trouble.failure.rule}`, role: "error" };
    case "stopped":
      return { text: "x stopped", role: "error" };
    case "never-began":
      return { text: "x never began", role: "error" };
    case "cannot":
      return { text: "? not run", role: "warning" };
  }
}

/** One fault, where it was seen first, and how many runs show it before any other. */
interface Fault {
  readonly cell: MatrixCell;
  readonly stroke: string;
  readonly trouble: Trouble;
  readonly runs: number;
  readonly cells: number;
}

/** The first fault of each run, those of one kind at one place as one. */
function faults({ cells }: MatrixResult): readonly Fault[] {
  const found = new Map<string, Fault>();
  for (const cell of cells) {
    const inCell = new Set<string>();
    for (const outcome of cell.outcomes) {
      const trouble = troubleOf(outcome);
      if (trouble === undefined) continue;
      const key = faultKey(trouble);
      const known = found.get(key) ?? { cell, stroke: outcome.stroke, trouble, runs: 0, cells: 0 };
      const isNewCell = !inCell.has(key);
      inCell.add(key);
      found.set(key, { ...known, runs: known.runs + 1, cells: known.cells + (isNewCell ? 1 : 0) });
    }
  }
  return [...found.values()];
}

function faultKey(trouble: Trouble): string {
  switch (trouble.kind) {
    case "failure": {
      const { rule, span } = trouble.failure;
      return `${rule} ${span?.file} ${span?.start}`;
    }
    case "stopped":
      return `stopped ${trouble.message} ${trouble.span?.file} ${trouble.span?.start}`;
    case "never-began":
      return "never began";
    case "cannot":
      return `cannot ${trouble.message}`;
  }
}

function faultAsText({ cell, stroke, trouble, runs, cells }: Fault, lines: FileLines, paint: Paint): string {
  const run = `mouse ${cell.mouse}, PC ${cell.pc}, stroke ${stroke}`;
  const others =
    runs === 1 ? "this run alone" : `${runs} runs of ${cells === 1 ? "1 cell" : `${cells} cells`}`;
  const seen = ["seen", `in ${others}`] as const;
  const first = ["first", `in ${run}`] as const;
  switch (trouble.kind) {
    case "failure":
      return failureAsText(trouble.failure, lines, paint, run, [seen]);
    case "stopped":
      return [stopAsText(trouble, lines, paint), ...detailsAsText([first, seen], paint)].join("\n");
    case "never-began": {
      const head = `  ${paint("error", "fault")}: the stroke never began: mouse and PC were not both ready`;
      return [head, ...detailsAsText([first, seen], paint)].join("\n");
    }
    case "cannot": {
      const head = `  ${paint("warning", "not run")}: ${trouble.message}`;
      return [head, ...detailsAsText([first, seen], paint)].join("\n");
    }
  }
}

function summary(result: MatrixResult, paint: Paint): string {
  const { passed, failed, notRun } = countCells(result);
  const cells = result.cells.length;
  const strokes = result.plan.strokes.length;
  const what = `${counted(cells, "cell")} of ${counted(strokes, "stroke")}`;
  if (passed === cells) return paint("good", `${what}: all passed`);
  const parts = [`${passed} passed`, `${failed} failed`];
  if (notRun > 0) parts.push(`${notRun} could not be run`);
  return paint("error", `${what}: ${parts.join(", ")}`);
}

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? "" : "s"}`;
}

function cellKey({ mouse, pc }: MatrixCell): string {
  return `${mouse} ${pc}`;
}
