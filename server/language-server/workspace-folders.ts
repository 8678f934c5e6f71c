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

  /** The innermost open folder around a file; the file's own folder for a file outside them all. */
  around(file: string): string {
    const holders = this.paths.filter((path) => file.startsWith(path.endsWith("/") ? path : `${path}/`));
    const [innermost] = holders.sort((a, b) => b.length - a.length);
    return innermost ?? file.slice(0, Math.max(1, file.lastIndexOf("/")));
  }

  #add(uris: readonly string[]): void {
    for (const uri of uris) {
      const path = pathOfUri(uri);
      if (path !== undefined) this.#paths.add(path);
    }
  }
}
