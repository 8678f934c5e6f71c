import { FileChangeType, type FileEvent } from "vscode-languageserver";
import { decodeText } from "../files/decode-text.ts";
import type { HandedFiles, Listings } from "../files/handed-files.ts";
import { isWithin } from "../files/paths.ts";
import type {
  FolderContents,
  HandedFile,
  ReadFilesParams,
  ReadFolderParams,
} from "./client-messages/files.ts";
import type { Log } from "./guard.ts";
import { pathOfUri, uriOfPath } from "./uri-paths.ts";
import { fileLimits, wantedFiles } from "./wanted-files.ts";

/** The client, asked for files. */
export interface FileClient {
  readFolder(params: ReadFolderParams): Promise<FolderContents>;
  readFiles(params: ReadFilesParams): Promise<readonly HandedFile[]>;
}

export interface FileReceiver {
  /** The files of a folder came or went: what was known of them is old. */
  changed(): void;
  readonly log: Log;
}

/** Keeps files as the client has them, for folders that only the client can read. */
export class HandedFolders {
  readonly #files: HandedFiles;
  readonly #client: FileClient;
  readonly #receiver: FileReceiver;
  /** By path: settled once its files are there; a folder that could not be read is not among them. */
  readonly #read = new Map<string, Promise<void>>();
  /** Changes are read one after the other, so that the last is what stays. */
  #changes: Promise<void> = Promise.resolve();
  #toldOfLimit = false;

  constructor(files: HandedFiles, client: FileClient, receiver: FileReceiver) {
    this.#files = files;
    this.#client = client;
    this.#receiver = receiver;
  }

  /** Reads those of these folders that were not read yet, and forgets others. */
  async follow(folders: readonly string[]): Promise<void> {
    const gone = [...this.#read.keys()].filter((folder) => !folders.includes(folder));
    for (const folder of gone) this.#read.delete(folder);
    for (const folder of gone) {
      this.#files.forget(folder, [...this.#read.keys()]);
      this.#receiver.changed();
    }
    await Promise.all(folders.map((folder) => this.#once(folder)));
  }

  /** Reads files anew that came, changed or went. */
  changed(events: readonly FileEvent[]): Promise<void> {
    this.#changes = this.#changes.then(() => this.#readAnew(events));
    return this.#changes;
  }

  /** A buffer was saved: not every provider of files tells of that. */
  saved(path: string, text: string): void {
    if (this.#files.has(path)) this.#files.set(path, text);
  }

  /** What the folders look like that a project may reach. */
  listingsFor(project: string): Listings {
    const [outermost] = this.#foldersWith(project).sort((one, other) => one.length - other.length);
    return outermost === undefined ? new Map() : this.#files.listingsBelow(outermost);
  }

  #once(folder: string): Promise<void> {
    const known = this.#read.get(folder);
    if (known !== undefined) return known;
    const reading = this.#readFolder(folder).catch((error: unknown) => {
      this.#receiver.log(`the files of ${uriOfPath(folder)} could not be had: ${String(error)}`);
      // Whoever wants it next has it asked for again.
      if (this.#read.get(folder) === reading) this.#read.delete(folder);
    });
    this.#read.set(folder, reading);
    return reading;
  }

  async #readFolder(folder: string): Promise<void> {
    const contents = await this.#client.readFolder({ folder: uriOfPath(folder), ...wantedFiles });
    if (!this.#read.has(folder)) return;
    for (const sentence of contents.leftOut) this.#receiver.log(sentence);
    for (const file of contents.files) this.#take(file);
    this.#receiver.changed();
  }

  async #readAnew(events: readonly FileEvent[]): Promise<void> {
    const wanted: string[] = [];
    for (const { uri, type } of events) {
      const path = pathOfUri(uri);
      if (path === undefined || this.#foldersWith(path).length === 0) continue;
      if (type === FileChangeType.Deleted) this.#files.forget(path);
      else if (this.#files.has(path) || this.#hasRoom()) wanted.push(uri);
    }
    if (wanted.length === 0) return;
    try {
      const { bytesOfFile } = fileLimits;
      for (const file of await this.#client.readFiles({ files: wanted, bytesOfFile })) this.#take(file);
    } catch (error) {
      this.#receiver.log(`changed files could not be had: ${String(error)}`);
    }
  }

  #foldersWith(path: string): string[] {
    return [...this.#read.keys()].filter((folder) => isWithin(folder, path));
  }

  #hasRoom(): boolean {
    if (this.#files.count < fileLimits.files) return true;
    if (!this.#toldOfLimit)
      this.#receiver.log(`no more than ${fileLimits.files} files are read; new ones are left out`);
    this.#toldOfLimit = true;
    return false;
  }

  #take({ uri, base64 }: HandedFile): void {
    const path = pathOfUri(uri);
    if (path !== undefined) this.#files.set(path, base64 === undefined ? undefined : textOf(base64));
  }
}

function textOf(base64: string): string {
  return decodeText(Uint8Array.from(atob(base64), (character) => character.charCodeAt(0)));
}
