import type { ProjectEntry, Service } from "../../src-core/service/service.ts";
import type { ProjectChecks } from "./project-checks.ts";
import type { WorkspaceFiles } from "./workspace-files.ts";
import type { WorkspaceFolders } from "./workspace-folders.ts";

/**
 * A folder of more units than this that nobody has called a firmware is not checked as a whole: it is likely to
 * be something else, and only what is open in it is looked at.
 */
const mostUnits = 300;

/**
 * Decides which projects a change in the workspace touches. A file that none of those in the workspace's folders reads is
 * checked by itself for as long as it is open.
 */
export class Projects {
  readonly #service: Service;
  readonly #files: WorkspaceFiles;
  readonly #folders: WorkspaceFolders;
  readonly #checks: ProjectChecks;
  /** The last search for projects; undefined before the first. */
  #search: Promise<void> | undefined;
  /** What it found. */
  #found: ReadonlySet<string> = new Set();

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
    const open = this.#files.buffers;
    // What a file read that is closed by now may be read by nothing else.
    const left = this.#dropAllBut(open) ? open.filter((file) => !this.#isRead(file)) : [];
    const read = files.filter((file) => this.#isRead(file) || open.includes(file));
    await this.#checks.request([...read, ...left].flatMap((file) => this.projectsOf(file)));
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
    this.#found = new Set(found.filter(isLikelyFirmware).map(({ id }) => id));
    this.#dropAllBut(this.#files.buffers);
    await this.#checks.request(this.#found);
    const alone = this.#files.buffers.filter(
      (file) => !this.#checks.projectsWith(file).some((id) => this.#found.has(id)),
    );
    this.#dropAllBut(alone);
    // Settings may have come, or gone, above them.
    await this.#checks.request(alone.flatMap((file) => this.#service.projectsAt(file).map(({ id }) => id)));
  }

  /** Drops what was not found, but for these files by themselves; whether there was any. */
  #dropAllBut(alone: readonly string[]): boolean {
    const gone = this.#checks.projects.filter((id) => !this.#found.has(id) && !alone.includes(id));
    this.#checks.drop(gone);
    return gone.length > 0;
  }

  #isRead(file: string): boolean {
    return this.#checks.projectsWith(file).length > 0;
  }
}

function isLikelyFirmware({ configured, units }: ProjectEntry): boolean {
  return configured || units <= mostUnits;
}
