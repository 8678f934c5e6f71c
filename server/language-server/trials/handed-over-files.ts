import type { SourceHost } from "../../../src-core/reader/source-host.ts";
import type { Listings } from "../../files/handed-files.ts";
import type { Texts } from "./texts.ts";

/** The files as the server sees them: what it handed over, and from the disk, where there is one, what it did not. */
export class HandedOverFiles implements SourceHost {
  readonly #disk: SourceHost | undefined;
  #texts: Texts = new Map();
  #listings: Listings = new Map();

  constructor(disk: SourceHost | undefined) {
    this.#disk = disk;
  }

  replace(texts: Texts, listings: Listings = new Map()): void {
    this.#texts = texts;
    this.#listings = listings;
  }

  readText(path: string): string | undefined {
    return this.#texts.get(path) ?? this.#disk?.readText(path);
  }

  listFolder(path: string): readonly string[] {
    return this.#listings.get(path) ?? this.#disk?.listFolder(path) ?? [];
  }

  get ignoresCase(): boolean {
    return this.#disk?.ignoresCase === true;
  }
}
