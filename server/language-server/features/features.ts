import type { CancellationToken, Connection } from "vscode-languageserver";
import type { TextDocument } from "vscode-languageserver-textdocument";
import type { Service } from "../../../src-core/service/service.ts";
import type { FollowedSettings } from "../followed-settings.ts";
import { guarded, type Log } from "../guard.ts";
import { letOthersRun, type QuietTimer } from "../pause.ts";
import type { Projects } from "../projects.ts";
import type { StartRunWorker } from "../runs/run-worker.ts";
import type { FirmwareTrials } from "../trials/firmware-trials.ts";
import { pathOfUri } from "../uri-paths.ts";
import type { WorkspaceFiles } from "../workspace-files.ts";
import { registerCodeActions } from "./code-actions.ts";
import { registerCodeLenses } from "./code-lenses.ts";
import { registerCompletion } from "./completion.ts";
import { registerExplain } from "./explain.ts";
import { registerHover } from "./hover.ts";
import { registerInlayHints } from "./inlay-hints.ts";
import { registerMatrix } from "./matrix.ts";
import { registerRuns } from "./runs.ts";

/** What every request handler works with. */
export interface FeatureContext {
  readonly connection: Connection;
  readonly service: Service;
  readonly files: WorkspaceFiles;
  readonly projects: Projects;
  readonly settings: FollowedSettings;
  readonly trials: FirmwareTrials;
  readonly typing: QuietTimer;
  /** The client knows the commands of lenses. */
  readonly lensCommands: boolean;
  readonly log: Log;
  readonly startRunWorker: StartRunWorker;
  /** How many cells of a matrix are run at the same time; at least 1. */
  readonly matrixWorkers: number;
  /** Has something done when the client is leaving; gives what takes that back. */
  onShutdown(work: () => void): () => void;
  /** The same for each project that is gone. */
  onDropped(work: (project: string) => void): () => void;
}

export function registerFeatures(context: FeatureContext): void {
  registerHover(context);
  registerExplain(context);
  registerInlayHints(context);
  registerCodeActions(context);
  registerCompletion(context);
  registerRuns(context);
  registerMatrix(context);
  registerCodeLenses(context);
}

/**
 * Answers a request with what `work` gives; with `otherwise` where that fails, or where the client has lost
 * interest before its turn came, as editors do while one types.
 */
export function answer<T>(
  { log }: FeatureContext,
  what: string,
  cancelled: CancellationToken,
  otherwise: T,
  work: () => T,
): Promise<T> {
  return guarded(what, log, otherwise, async () => {
    await letOthersRun();
    return cancelled.isCancellationRequested ? otherwise : work();
  });
}

/** An open document that belongs to a project. */
export interface Subject {
  readonly file: string;
  readonly document: TextDocument;
  /** The projects that read it, at least one. */
  readonly projects: readonly string[];
}

/** What a request is about; undefined for a document that is not open, not on disk or in no project. */
export function subjectOf({ files, projects }: FeatureContext, uri: string): Subject | undefined {
  const file = pathOfUri(uri);
  const document = file === undefined ? undefined : files.bufferOf(file);
  if (file === undefined || document === undefined) return undefined;
  const own = projects.projectsOf(file);
  return own.length === 0 ? undefined : { file, document, projects: own };
}

/** The first answer that one of the projects has. */
export function firstAnswer<T>(
  projects: readonly string[],
  ask: (project: string) => T | undefined,
): T | undefined {
  for (const project of projects) {
    const answer = ask(project);
    if (answer !== undefined) return answer;
  }
  return undefined;
}
