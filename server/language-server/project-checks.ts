import type { Diagnostic } from "vscode-languageserver";
import type { Service, TrialResult } from "../../src-core/service/service.ts";
import type { CheckStatus } from "./client-messages/status.ts";
import { diagnosticsByFile } from "./diagnostics.ts";
import { guarded, type Log } from "./guard.ts";
import { letOthersRun } from "./pause.ts";
import { Positions } from "./positions.ts";
import { ShownDiagnostics } from "./shown-diagnostics.ts";
import type { Trials } from "./trials/firmware-trials.ts";
import type { WorkspaceFiles } from "./workspace-files.ts";

/** Where results go. */
export interface CheckReceiver {
  publish(file: string, diagnostics: readonly Diagnostic[]): void;
  status(status: CheckStatus): void;
  /** The project is gone. */
  dropped(project: string): void;
  /** What is shown above functions is not what there is to show. */
  lensesChanged(): void;
  readonly log: Log;
  /** The URI of a rule's page; undefined for a client that shows none. */
  pageUriOf(rule: string): string | undefined;
}

/**
 * Keeps the diagnostics of all known projects true. Projects are checked one at a time with pauses, and a
 * project that is touched again before its turn is checked once. What trying a firmware out shows is told by the
 * check after the trial.
 */
export class ProjectChecks {
  readonly #service: Service;
  readonly #files: WorkspaceFiles;
  readonly #trials: Trials;
  readonly #receiver: CheckReceiver;
  readonly #shown: ShownDiagnostics;
  /** By project: what was taken over last. */
  readonly #taken = new Map<string, TrialResult>();
  readonly #waiting = new Set<string>();
  #running: Promise<void> | undefined;

  constructor(service: Service, files: WorkspaceFiles, trials: Trials, receiver: CheckReceiver) {
    this.#service = service;
    this.#files = files;
    this.#trials = trials;
    this.#receiver = receiver;
    this.#shown = new ShownDiagnostics((file, diagnostics) => receiver.publish(file, diagnostics));
  }

  /** Projects that were found to read `file`. */
  projectsWith(file: string): readonly string[] {
    return this.#shown.projectsWith(file);
  }

  /** Whether one of them reads the file `path`, or one below the folder `path`. */
  reachInto(path: string): boolean {
    return this.#shown.reachesInto(path);
  }

  get projects(): readonly string[] {
    return [...new Set([...this.#shown.projects, ...this.#waiting])];
  }

  /** The text of `file` changed; a request follows when typing pauses. */
  edited(file: string): void {
    for (const project of this.projectsWith(file)) this.#trials.edited(project);
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
      this.#trials.drop(project);
      this.#taken.delete(project);
      this.#shown.drop(project);
      this.#service.forget(project);
      this.#receiver.dropped(project);
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
    this.#receiver.status({
      state: "ready",
      projects: this.#shown.projects.length,
      ...this.#shown.count(),
    });
  }

  #check(project: string): void {
    const read = this.#service.check(project);
    const tried = this.#trials.resultOf(project, this.#files.textsOf(read.files));
    if (tried !== undefined) this.#takeOver(project, tried);
    // An editor asks anew for the file that is typed in alone, and its others show what is of older texts, too.
    else if (this.#taken.delete(project)) this.#receiver.lensesChanged();
    const result = tried === undefined ? read : this.#service.check(project);
    const pageUriOf = (rule: string) => this.#receiver.pageUriOf(rule);
    this.#shown.replace(
      project,
      diagnosticsByFile(result, tried?.failure, new Positions(this.#files), pageUriOf),
    );
  }

  #takeOver(project: string, tried: TrialResult): void {
    this.#service.takeOver(project, tried);
    if (this.#taken.get(project) === tried) return;
    this.#taken.set(project, tried);
    this.#receiver.lensesChanged();
  }
}
