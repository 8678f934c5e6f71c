import type { SourceHost } from "../../src-core/reader/source-host.ts";
import { isBelow, isWithin } from "./paths.ts";

/** Names in folders, folders with `/` at their end, by the folder's path. */
export type Listings = ReadonlyMap<string, readonly string[]>;

/** Files whose texts somebody has handed over, as there is no disk that has them. */
export class HandedFiles implements SourceHost {
  readonly #texts = new Map<string, string>();
  /** Undefined after files came or went. */
  #listings: Listings | undefined;

  readText(path: string): string | undefined {
    return this.#texts.get(path);
  }

  listFolder(path: string): readonly string[] {
    return this.#allListings().get(path) ?? [];
  }

  get count(): number {
    return this.#texts.size;
  }

  /** The file has this text; undefined for one that is gone. */
  set(path: string, text: string | undefined): void {
    if (text === undefined) this.#texts.delete(path);
    else this.#texts.set(path, text);
    this.#listings = undefined;
  }

  has(path: string): boolean {
    return this.#texts.has(path);
  }

  /** A file is gone, or a folder with all below it but what lies in one of the folders that stay. */
  forget(gone: string, staying: readonly string[] = []): void {
    for (const path of [...this.#texts.keys()]) {
      if (isWithin(gone, path) && !staying.some((folder) => isBelow(folder, path))) this.#texts.delete(path);
    }
    this.#listings = undefined;
  }

  /** Listings of a folder and of all folders below it. */
  listingsBelow(folder: string): Listings {
    return new Map([...this.#allListings()].filter(([path]) => isWithin(folder, path)));
  }

  #allListings(): Listings {
    this.#listings ??= listingsOf(this.#texts.keys());
    return this.#listings;
  }
}

function listingsOf(files: Iterable<string>): Listings {
  const folders = new Map<string, Set<string>>();
  const enter = (folder: string, name: string): boolean => {
    const known = folders.get(folder);
    if (known?.has(name)) return false;
    folders.set(folder, (known ?? new Set()).add(name));
    return true;
  };
  for (const file of files) {
    let path = file;
    let mark = "";
    for (let slash = path.lastIndexOf("/"); slash >= 0; slash = path.lastIndexOf("/")) {
      const folder = slash === 0 ? "/" : path.slice(0, slash);
      if (!enter(folder, `${path.slice(slash + 1)}${mark}`) || slash === 0) break;
      path = folder;
      mark = "/";
    }
  }
  return new Map([...folders].map(([folder, names]) => [folder, [...names].sort()]));
}
