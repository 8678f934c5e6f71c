import type { SourceHost } from "../../../src-core/reader/source-host.ts";
import type { Texts } from "./texts.ts";

/** The files as the server sees them: the texts that it handed over, and what it did not read from the disk. */
export class HandedOverFiles implements SourceHost {
  readonly #disk: SourceHost;
  #texts: Texts = new Map();

  constructor(disk: SourceHost) {
    this.#disk = disk;
  }

  replace(texts: Texts): void {
    this.#texts = texts;
  }

  readText(path: string): string | undefined {
    return this.#texts.get(path) ?? this.#disk.readText(path);
  }

  listFolder(path: string): readonly string[] {
    return this.#disk.listFolder(path);
  }
}
