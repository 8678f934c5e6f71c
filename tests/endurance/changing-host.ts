import type { SourceHost } from "../../src-core/reader/source-host.ts";

/** A host over records whose files a test changes as an author would while typing. */
export class ChangingHost implements SourceHost {
  readonly #files: Map<string, string>;

  constructor(files: Readonly<Record<string, string>>) {
    this.#files = new Map(Object.entries(files));
  }

  write(file: string, text: string): void {
    this.#files.set(file, text);
  }

  readText(path: string): string | undefined {
    return this.#files.get(path);
  }

  listFolder(path: string): readonly string[] {
    return path === "." ? [...this.#files.keys()] : [];
  }
}
