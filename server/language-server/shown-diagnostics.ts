import { type Diagnostic, DiagnosticSeverity } from "vscode-languageserver";
import type { Summary } from "../../src-core/present/summary.ts";
import { isWithin } from "../files/paths.ts";

/** A project's diagnostics by file; files that were read and have none are there with an empty list. */
export type ProjectDiagnostics = ReadonlyMap<string, readonly Diagnostic[]>;

/** What the editor shows: the diagnostics of all projects, where only what changed is published. */
export class ShownDiagnostics {
  readonly #publish: (file: string, diagnostics: readonly Diagnostic[]) => void;
  readonly #projects = new Map<string, ProjectDiagnostics>();
  /** By file, as JSON. */
  readonly #shown = new Map<string, string>();

  constructor(publish: (file: string, diagnostics: readonly Diagnostic[]) => void) {
    this.#publish = publish;
  }

  get projects(): readonly string[] {
    return [...this.#projects.keys()];
  }

  /** Projects that were found to read `file`. */
  projectsWith(file: string): readonly string[] {
    return [...this.#projects].filter(([, diagnostics]) => diagnostics.has(file)).map(([id]) => id);
  }

  /** Whether a project reads the file `path`, or one below the folder `path`. */
  reachesInto(path: string): boolean {
    return [...this.#projects.values()].some((diagnostics) =>
      [...diagnostics.keys()].some((file) => isWithin(path, file)),
    );
  }

  replace(project: string, diagnostics: ProjectDiagnostics): void {
    const before = this.#projects.get(project)?.keys() ?? [];
    this.#projects.set(project, diagnostics);
    this.#show(new Set([...before, ...diagnostics.keys()]));
  }

  drop(project: string): void {
    const files = this.#projects.get(project)?.keys() ?? [];
    this.#projects.delete(project);
    this.#show(files);
  }

  /** Counts what is shown, so that what two projects share counts once. */
  count(): Omit<Summary, "files"> {
    const shown = [...this.#shown.keys()].flatMap((file) => this.#diagnosticsOf(file));
    const count = (severity: DiagnosticSeverity) => shown.filter((one) => one.severity === severity).length;
    return {
      errors: count(DiagnosticSeverity.Error),
      warnings: count(DiagnosticSeverity.Warning),
      infos: count(DiagnosticSeverity.Information),
    };
  }

  #show(files: Iterable<string>): void {
    for (const file of files) {
      const diagnostics = this.#diagnosticsOf(file);
      const text = JSON.stringify(diagnostics);
      if ((this.#shown.get(file) ?? "[]") === text) continue;
      this.#shown.set(file, text);
      this.#publish(file, diagnostics);
    }
  }

  /** A header that two projects read may be at fault in both; what is the same is shown once. */
  #diagnosticsOf(file: string): readonly Diagnostic[] {
    const all = new Map<string, Diagnostic>();
    for (const diagnostics of this.#projects.values()) {
      for (const diagnostic of diagnostics.get(file) ?? []) all.set(JSON.stringify(diagnostic), diagnostic);
    }
    return [...all.values()];
  }
}
