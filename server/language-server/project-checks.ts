import { type Diagnostic, DiagnosticSeverity } from "vscode-languageserver/node";
import type { Service } from "../../src-core/service/service.ts";
import { diagnosticsByFile } from "./diagnostics.ts";
import { guarded, type Log } from "./guard.ts";
import { letOthersRun } from "./pause.ts";
import { Positions } from "./positions.ts";
import type { CheckStatus } from "./status.ts";
import type { WorkspaceFiles } from "./workspace-files.ts";

/** Where results go. */
export interface CheckReceiver {
  publish(file: string, diagnostics: readonly Diagnostic[]): void;
  status(status: CheckStatus): void;
  readonly log: Log;
}

interface Checked {
  readonly files: ReadonlySet<string>;
  /** By file. */
  readonly diagnostics: ReadonlyMap<string, readonly Diagnostic[]>;
}

/**
 * Keeps the diagnostics of all known projects true. Projects are checked one at a time with pauses, and a
 * project that is touched again before its turn is checked once.
 */
export class ProjectChecks {
  readonly #service: Service;
  readonly #files: WorkspaceFiles;
  readonly #receiver: CheckReceiver;
  readonly #checked = new Map<string, Checked>();
  readonly #waiting = new Set<string>();
  /** What the editor shows, as JSON, so that nothing is sent twice. */
  readonly #shown = new Map<string, string>();
  #running: Promise<void> | undefined;

  constructor(service: Service, files: WorkspaceFiles, receiver: CheckReceiver) {
    this.#service = service;
    this.#files = files;
    this.#receiver = receiver;
  }

  /** Projects that were found to read `file`. */
  projectsWith(file: string): readonly string[] {
    return [...this.#checked].filter(([, { files }]) => files.has(file)).map(([id]) => id);
  }

  get projects(): readonly string[] {
    return [...new Set([...this.#checked.keys(), ...this.#waiting])];
  }

  /** Checks these projects as soon as those before them are done. */
  request(projects: Iterable<string>): Promise<void> {
    for (const project of projects) this.#waiting.add(project);
    this.#running ??= this.#work();
    return this.#running;
  }

  /** Forgets projects that are gone and takes their diagnostics away. */
  drop(projects: Iterable<string>): void {
    for (const project of projects) {
      this.#waiting.delete(project);
      const files = this.#checked.get(project)?.files ?? [];
      this.#checked.delete(project);
      this.#show(files);
    }
  }

  async #work(): Promise<void> {
    this.#receiver.status({ state: "checking" });
    for (;;) {
      await letOthersRun();
      const [project] = this.#waiting;
      if (project === undefined) break;
      this.#waiting.delete(project);
      await guarded(`checking ${project}`, this.#receiver.log, undefined, () => this.#check(project));
    }
    this.#running = undefined;
    this.#receiver.status(this.#statusNow());
  }

  #check(project: string): void {
    const before = this.#checked.get(project)?.files ?? new Set<string>();
    const result = this.#service.check(project);
    const diagnostics = diagnosticsByFile(result, new Positions(this.#files));
    const files = new Set(diagnostics.keys());
    this.#checked.set(project, { files, diagnostics });
    this.#show(new Set([...before, ...files]));
  }

  #show(files: Iterable<string>): void {
    for (const file of files) {
      const diagnostics = this.#diagnosticsOf(file);
      const text = JSON.stringify(diagnostics);
      if ((this.#shown.get(file) ?? "[]") === text) continue;
      this.#shown.set(file, text);
      this.#receiver.publish(file, diagnostics);
    }
  }

  /** A header that two projects read may be at fault in both; what is the same is shown once. */
  #diagnosticsOf(file: string): readonly Diagnostic[] {
    const all = new Map<string, Diagnostic>();
    for (const { diagnostics } of this.#checked.values()) {
      for (const diagnostic of diagnostics.get(file) ?? []) all.set(JSON.stringify(diagnostic), diagnostic);
    }
    return [...all.values()];
  }

  /** Counts what is shown, so that what two projects share counts once. */
  #statusNow(): CheckStatus {
    const shown = [...this.#shown.keys()].flatMap((file) => this.#diagnosticsOf(file));
    const count = (severity: DiagnosticSeverity) => shown.filter((one) => one.severity === severity).length;
    return {
      state: "ready",
      projects: this.#checked.size,
      errors: count(DiagnosticSeverity.Error),
      warnings: count(DiagnosticSeverity.Warning),
      infos: count(DiagnosticSeverity.Information),
    };
  }
}
