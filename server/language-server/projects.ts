import type { Service } from "../../src-core/service/service.ts";
import type { ProjectChecks } from "./project-checks.ts";
import type { WorkspaceFiles } from "./workspace-files.ts";
import type { WorkspaceFolders } from "./workspace-folders.ts";

/** Decides which projects a change in the workspace touches. */
export class Projects {
  readonly #service: Service;
  readonly #files: WorkspaceFiles;
  readonly #folders: WorkspaceFolders;
  readonly #checks: ProjectChecks;

  constructor(service: Service, files: WorkspaceFiles, folders: WorkspaceFolders, checks: ProjectChecks) {
    this.#service = service;
    this.#files = files;
    this.#folders = folders;
    this.#checks = checks;
  }

  /** Projects that read this file, and the one that it stands in. */
  rootsOf(file: string): readonly string[] {
    const roots = new Set(this.#checks.rootsWith(file));
    const own = this.#service.projectOf(file, this.#folders.around(file));
    if (own !== undefined) roots.add(own);
    return [...roots];
  }

  async checkFilesChanged(files: Iterable<string>): Promise<void> {
    await this.#checks.request([...files].flatMap((file) => this.rootsOf(file)));
  }

  /** Looks for projects anew: after the start, and when files or folders came or went. */
  async checkEverything(): Promise<void> {
    const found = new Set(this.#folders.paths.flatMap((folder) => this.#service.projectsIn(folder)));
    for (const file of this.#files.buffers) for (const root of this.rootsOf(file)) found.add(root);
    this.#checks.drop(this.#checks.roots.filter((root) => !found.has(root)));
    await this.#checks.request(found);
  }
}
