import { commands, type Disposable, Uri, workspace } from "vscode";

/** Pages of Markdown that are shown and stand in no file; each is kept, so that its tab stays what it is. */
export class MarkdownPages implements Disposable {
  readonly #scheme: string;
  readonly #provider: Disposable;
  /** Markdown by the address of its page. */
  readonly #pages = new Map<string, string>();

  constructor(scheme: string) {
    this.#scheme = scheme;
    this.#provider = workspace.registerTextDocumentContentProvider(scheme, {
      provideTextDocumentContent: (uri) => this.#pages.get(uri.toString()) ?? "",
    });
  }

  /** How many there are. */
  get count(): number {
    return this.#pages.size;
  }

  /** The last part of the path is the title of the tab. */
  async show(path: string, markdown: string): Promise<void> {
    const uri = Uri.from({ scheme: this.#scheme, path });
    this.#pages.set(uri.toString(), markdown);
    await commands.executeCommand("markdown.showPreview", uri);
  }

  dispose(): void {
    this.#provider.dispose();
  }
}
