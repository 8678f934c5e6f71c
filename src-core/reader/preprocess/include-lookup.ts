import { folderOf, isAbsolute, joinPath } from "../paths.ts";
import type { SourceHost } from "../source-host.ts";
import type { LookupRecord } from "./kept-inclusions.ts";
import { ListedPaths } from "./listed-paths.ts";
import { isWorkspaceFile } from "./notebook.ts";

export interface FoundFile {
  /** Path of the workspace, or the header's name in angle brackets for a stand-in. */
  readonly file: string;
  readonly text: string;
}

export interface LookupInput {
  readonly host: SourceHost;
  readonly includePaths: readonly string[];
  readonly standIns: (name: string) => string | undefined;
}

/** Finds the file of an include: beside the including file, on the include paths, among the stand-ins. */
export class IncludeLookup {
  private readonly input: LookupInput;
  private readonly texts = new Map<string, string | undefined>();
  private readonly paths: ListedPaths;
  /** Takes down what is asked while a built-in header is read that may be kept. */
  record: LookupRecord | undefined;

  constructor(input: LookupInput) {
    this.input = input;
    this.paths = new ListedPaths(input.host);
  }

  read(path: string): string | undefined {
    if (!this.texts.has(path)) this.texts.set(path, this.input.host.readText(path));
    return this.texts.get(path);
  }

  standIn(name: string): string | undefined {
    const text = this.input.standIns(name);
    this.record?.headers.set(name, text);
    return text;
  }

  /** `skip`: for `#include_next`, the file found first before; the search goes on behind it. */
  find(written: string, isQuoted: boolean, from: string, skip: string | undefined): FoundFile | undefined {
    const name = written.replaceAll("\\", "/");
    const paths = this.pathsOf(name, isQuoted, from);
    const start =
      skip === undefined ? 0 : paths.findIndex((path) => this.paths.listed(path, from) === skip) + 1;
    for (const path of paths.slice(start)) {
      const text = this.read(path);
      if (text !== undefined) {
        if (this.record !== undefined) this.record.mustRepeat = true;
        const file = this.paths.listed(path, from);
        return { file, text: this.read(file) ?? text };
      }
      this.record?.absent.add(path);
    }
    const file = `<${name}>`;
    const text = file === skip ? undefined : this.standIn(name);
    return text === undefined ? undefined : { file, text };
  }

  /** Paths of the workspace where an include is looked for, in order. */
  private pathsOf(name: string, isQuoted: boolean, from: string): readonly string[] {
    if (name === "") return [];
    if (isAbsolute(name)) return [joinPath(".", name)];
    const { includePaths } = this.input;
    const isBeside = isQuoted && isWorkspaceFile(from);
    const folders = isBeside ? [folderOf(from) ?? ".", ...includePaths] : includePaths;
    return folders.map((folder) => joinPath(folder, name));
  }
}
