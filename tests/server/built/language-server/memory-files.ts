import type { MessageConnection } from "vscode-jsonrpc/node";
import { type Files, readFiles, readFolder } from "../../../../client/hand-over/read-folder.ts";
import type {
  ReadFilesParams,
  ReadFolderParams,
} from "../../../../server/language-server/client-messages/files.ts";

/** Files that are on no disk, which the client hands over as the extension does. Keys are URIs. */
export class MemoryFiles implements Files<string> {
  readonly texts: Map<string, string>;
  /** Folders are listed when this is settled. */
  held: Promise<void> = Promise.resolve();
  /** URIs of files that were read, in order. */
  readonly reads: string[] = [];

  constructor(root: string, files: Readonly<Record<string, string>>) {
    this.texts = new Map(Object.entries(files).map(([name, text]) => [`${startOf(root)}${name}`, text]));
  }

  answerRequestsOf(connection: MessageConnection): void {
    connection.onRequest("edgewise/readFolder", (params: ReadFolderParams) =>
      readFolder(this, params.folder, params),
    );
    connection.onRequest("edgewise/readFiles", (params: ReadFilesParams) =>
      readFiles(this, params.files, params),
    );
  }

  async list(folder: string) {
    await this.held;
    const start = startOf(folder);
    const rests = [...this.texts.keys()]
      .filter((uri) => uri.startsWith(start))
      .map((uri) => uri.slice(start.length));
    const entries = new Map(
      rests.map((rest) => [rest.replace(/\/.*$/, ""), { isFolder: rest.includes("/") }]),
    );
    return [...entries].map(([name, { isFolder }]) => ({ name, isFolder }));
  }

  async size(file: string): Promise<number> {
    return this.#bytes(file).length;
  }

  async read(file: string): Promise<Uint8Array> {
    this.reads.push(file);
    return this.#bytes(file);
  }

  child(folder: string, name: string): string {
    return `${startOf(folder)}${name}`;
  }

  uriOf(address: string): string {
    return address;
  }

  #bytes(file: string): Uint8Array {
    const text = this.texts.get(file);
    if (text === undefined) throw new Error(`no ${file}`);
    return new TextEncoder().encode(text);
  }
}

/** What the URIs of all that is in a folder begin with. */
function startOf(folder: string): string {
  return folder.endsWith("/") ? folder : `${folder}/`;
}
