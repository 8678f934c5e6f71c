import type { ProjectEntry, Service } from "../../src-core/service/service.ts";
import type { ProjectChecks } from "./project-checks.ts";
import type { WorkspaceFiles } from "./workspace-files.ts";
import type { WorkspaceFolders } from "./workspace-folders.ts";

/**
 * A folder of more units than this that nobody has called a firmware is not checked as a whole: it is likely to
 * be something else, and only what is open in it is looked at.
 */
const mostUnits = 300;

/** Decides which projects a change in the workspace touches. */
export class Projects {
  readonly #service: Service;
  readonly #files: WorkspaceFiles;
  readonly #folders: WorkspaceFolders;
  readonly #checks: ProjectChecks;
  /** The last search for projects; undefined before the first. */
  #search: Promise<void> | undefined;

  constructor(service: Service, files: WorkspaceFiles, folders: WorkspaceFolders, checks: ProjectChecks) {
    this.#service = service;
    this.#files = files;
    this.#folders = folders;
    this.#checks = checks;
  }

  /** Projects that read this file; where there is none, the one that it makes by itself. */
  projectsOf(file: string): readonly string[] {
    const known = this.#checks.projectsWith(file);
    return known.length > 0 ? known : this.#service.projectsAt(file).map(({ id }) => id);
  }

  /** All that are checked, once they have been looked for. */
  async known(): Promise<readonly string[]> {
    await (this.#search ?? this.checkEverything());
    return this.#checks.projects;
  }

  /** Checks what the new texts of these files may change. */
  async checkChanged(files: readonly string[]): Promise<void> {
    // Settings say which files make a project, and before the first search no file is known to belong to one.
    const search = files.some((file) => file.endsWith("/edgewise.json")) ? undefined : this.#search;
    if (search === undefined) return this.checkEverything();
    await search;
    await this.#checks.request(files.flatMap((file) => this.projectsOf(file)));
  }

  /** Looks for projects anew: after the start, and when files or folders came or went. */
  checkEverything(): Promise<void> {
    const search = this.#searchAndCheck();
    // Who waits for a search wants to come after it, however it ended.
    this.#search = search.catch(() => undefined);
    return search;
  }

  async #searchAndCheck(): Promise<void> {
    const folders = await this.#folders.readable();
    const found = folders.flatMap((folder) => this.#service.projectsAt(folder));
    const ids = new Set(found.filter(isLikelyFirmware).map(({ id }) => id));
    this.#checks.drop(this.#checks.projects.filter((id) => !ids.has(id)));
    await this.#checks.request(ids);
    const alone = this.#files.buffers.filter((file) => this.#checks.projectsWith(file).length === 0);
    await this.#checks.request(alone.flatMap((file) => this.projectsOf(file)));
  }
}

function isLikelyFirmware({ configured, units }: ProjectEntry): boolean {
  return configured || units <= mostUnits;
}
