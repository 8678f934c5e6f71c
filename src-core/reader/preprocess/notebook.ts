import type { NotUnderstood, Span } from "../../finding.ts";
import type { MacroDefinition, MacroUse, MissingInclude } from "../tokens.ts";
import { PROBLEMS } from "./budget.ts";

/** Stand-in headers and macros from outside have names in angle brackets and are no files of the workspace. */
export function isWorkspaceFile(file: string): boolean {
  return !file.startsWith("<");
}

/** What is said about a unit while it is read; each thing once. */
export class Notebook {
  readonly files: string[] = [];
  readonly definitions: MacroDefinition[] = [];
  readonly uses: MacroUse[] = [];
  readonly missing: MissingInclude[] = [];
  readonly problems: NotUnderstood[] = [];
  private readonly said = new Set<string>();

  /** Notes a problem at `span`; a repetition at the same place is dropped. */
  problem(span: Span, message: string): void {
    const key = `${span.file}\0${span.start}\0${message}`;
    if (this.said.has(key) || this.problems.length >= PROBLEMS) return;
    this.said.add(key);
    this.problems.push({ span: { file: span.file, start: span.start, end: span.end }, message });
  }

  /** Notes a problem that may arise in many places but is said for the first alone. */
  problemOnce(key: string, span: Span, message: string): void {
    if (this.said.has(key)) return;
    this.said.add(key);
    this.problem(span, message);
  }

  missingInclude(span: Span, name: string): void {
    if (this.missing.some((missing) => missing.name === name)) return;
    this.missing.push({ span: { file: span.file, start: span.start, end: span.end }, name });
  }

  file(path: string): void {
    if (isWorkspaceFile(path) && !this.files.includes(path)) this.files.push(path);
  }
}
