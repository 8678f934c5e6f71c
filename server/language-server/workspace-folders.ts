import type { InitializeParams, WorkspaceFoldersChangeEvent } from "vscode-languageserver";
import { pathOfUri } from "./uri-paths.ts";

/** Has the files of these folders, and of no others, fetched where no disk has them; resolves once they are there. */
export type FetchFolders = (paths: readonly string[]) => Promise<void>;

/** The folders that the editor has open, as paths. */
export class WorkspaceFolders {
  readonly #paths = new Set<string>();
  readonly #fetch: FetchFolders;

  constructor(
    { workspaceFolders, rootUri }: Pick<InitializeParams, "workspaceFolders" | "rootUri">,
    fetch: FetchFolders,
  ) {
    this.#fetch = fetch;
    const uris = workspaceFolders?.map(({ uri }) => uri) ?? (rootUri == null ? [] : [rootUri]);
    this.#add(uris);
  }

  follow({ added, removed }: WorkspaceFoldersChangeEvent): void {
    for (const { uri } of removed) {
      const path = pathOfUri(uri);
      if (path !== undefined) this.#paths.delete(path);
    }
    this.#add(added.map(({ uri }) => uri));
  }

  get paths(): readonly string[] {
    return [...this.#paths];
  }

  /** The same, once their files can be read. */
  async readable(): Promise<readonly string[]> {
    await this.#fetch(this.paths);
    return this.paths;
  }

  #add(uris: readonly string[]): void {
    for (const uri of uris) {
      const path = pathOfUri(uri);
      if (path !== undefined) this.#paths.add(path);
    }
  }
}
