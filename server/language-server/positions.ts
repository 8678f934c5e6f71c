import type { Range } from "vscode-languageserver";
import { TextDocument } from "vscode-languageserver-textdocument";
import type { Span } from "../../src-core/finding.ts";
import { uriOfPath } from "./uri-paths.ts";
import type { WorkspaceFiles } from "./workspace-files.ts";

/** Turns the core's offsets into the editor's lines and UTF-16 columns, over the texts that were checked. */
export class Positions {
  readonly #files: WorkspaceFiles;
  readonly #documents = new Map<string, TextDocument>();

  constructor(files: WorkspaceFiles) {
    this.#files = files;
  }

  rangeOf({ file, start, end }: Span): Range {
    const document = this.#documentOf(file);
    return { start: document.positionAt(start), end: document.positionAt(end) };
  }

  #documentOf(file: string): TextDocument {
    const open = this.#files.bufferOf(file) ?? this.#documents.get(file);
    if (open !== undefined) return open;
    const made = TextDocument.create(uriOfPath(file), "cpp", 0, this.#files.readText(file) ?? "");
    this.#documents.set(file, made);
    return made;
  }
}
