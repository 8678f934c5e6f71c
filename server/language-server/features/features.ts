import type { Connection } from "vscode-languageserver/node";
import type { TextDocument } from "vscode-languageserver-textdocument";
import type { Service } from "../../../src-core/service/service.ts";
import type { Log } from "../guard.ts";
import type { Projects } from "../projects.ts";
import { pathOfUri } from "../uri-paths.ts";
import type { WorkspaceFiles } from "../workspace-files.ts";
import { registerCodeActions } from "./code-actions.ts";
import { registerCompletion } from "./completion.ts";
import { registerHover } from "./hover.ts";

/** What every request handler works with. */
export interface FeatureContext {
  readonly connection: Connection;
  readonly service: Service;
  readonly files: WorkspaceFiles;
  readonly projects: Projects;
  readonly log: Log;
}

export function registerFeatures(context: FeatureContext): void {
  registerHover(context);
  registerCodeActions(context);
  registerCompletion(context);
}

/** An open document that belongs to a project. */
export interface Subject {
  readonly file: string;
  readonly document: TextDocument;
  /** Roots of the projects that read it, at least one. */
  readonly roots: readonly string[];
}

/** What a request is about; undefined for a document that is not open, not on disk or in no project. */
export function subjectOf({ files, projects }: FeatureContext, uri: string): Subject | undefined {
  const file = pathOfUri(uri);
  const document = file === undefined ? undefined : files.bufferOf(file);
  if (file === undefined || document === undefined) return undefined;
  const roots = projects.rootsOf(file);
  return roots.length === 0 ? undefined : { file, document, roots };
}

/** The first answer that one of the projects has. */
export function firstAnswer<T>(
  roots: readonly string[],
  ask: (root: string) => T | undefined,
): T | undefined {
  for (const root of roots) {
    const answer = ask(root);
    if (answer !== undefined) return answer;
  }
  return undefined;
}
