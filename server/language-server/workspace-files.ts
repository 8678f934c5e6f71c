import type { TextDocument } from "vscode-languageserver-textdocument";
import type { SourceHost } from "../../src-core/reader/source-host.ts";
import { isWithin } from "../files/paths.ts";

/**
 * The workspace as the author sees it: unsaved buffers over the files of the disk. What the disk said is kept
 * until `forget` tells that it changed, so that a check after a keystroke reads no file again.
 */
export class WorkspaceFiles implements SourceHost {
  readonly #disk: SourceHost;
  readonly #buffers = new Map<string, TextDocument>();
  readonly #texts = new Map<string, string | undefined>();
  readonly #folders = new Map<string, readonly string[]>();

  constructor(disk: SourceHost) {
    this.#disk = disk;
  }

  readText(path: string): string | undefined {
    const buffer = this.#buffers.get(path);
    if (buffer !== undefined) return buffer.getText();
    if (!this.#texts.has(path)) this.#texts.set(path, this.#disk.readText(path));
    return this.#texts.get(path);
  }

  /** The texts of those files that can be read. */
  textsOf(files: readonly string[]): ReadonlyMap<string, string> {
    return new Map(
      files.flatMap((file): [string, string][] => {
        const text = this.readText(file);
        return text === undefined ? [] : [[file, text]];
      }),
    );
  }

  listFolder(path: string): readonly string[] {
    const known = this.#folders.get(path);
    if (known !== undefined) return known;
    const names = this.#disk.listFolder(path);
    this.#folders.set(path, names);
    return names;
  }

  get ignoresCase(): boolean {
    return this.#disk.ignoresCase === true;
  }

  openBuffer(path: string, document: TextDocument): void {
    this.#buffers.set(path, document);
  }

  closeBuffer(path: string): void {
    this.#buffers.delete(path);
    this.#texts.delete(path);
  }

  bufferOf(path: string): TextDocument | undefined {
    return this.#buffers.get(path);
  }

  get buffers(): readonly string[] {
    return [...this.#buffers.keys()];
  }

  /** The disk changed at `path`: what it has there and below, and the listings of folders, are read again when next asked for. */
  forget(path: string): void {
    for (const file of [...this.#texts.keys()]) if (isWithin(path, file)) this.#texts.delete(file);
    this.#folders.clear();
  }

  forgetAll(): void {
    this.#texts.clear();
    this.#folders.clear();
  }
}
