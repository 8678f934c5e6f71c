import type { InitializeParams, WorkspaceFoldersChangeEvent } from "vscode-languageserver/node";
import { pathOfUri } from "./uri-paths.ts";

/** The folders that the editor has open, as paths. */
export class WorkspaceFolders {
  readonly #paths = new Set<string>();

  constructor({ workspaceFolders, rootUri }: Pick<InitializeParams, "workspaceFolders" | "rootUri">) {
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

  #add(uris: readonly string[]): void {
    for (const uri of uris) {
      const path = pathOfUri(uri);
      if (path !== undefined) this.#paths.add(path);
    }
  }
}
