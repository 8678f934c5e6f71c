import { commands, type Disposable, EventEmitter, Uri, workspace } from "vscode";
import { KeptPages } from "./kept-pages.ts";

/** As many tabs as somebody may have open. */
const most = 50;

/** Pages of Markdown that are shown and stand in no file; each is kept for a while, so that its tab stays what it is. */
export class MarkdownPages implements Disposable {
  readonly #scheme: string;
  readonly #registered: readonly Disposable[];
  readonly #pages = new KeptPages(most);
  readonly #changed = new EventEmitter<Uri>();

  /** `again` says how to get a page that is not kept any more, as after the window was opened anew. */
  constructor(scheme: string, again: string) {
    this.#scheme = scheme;
    const provider = workspace.registerTextDocumentContentProvider(scheme, {
      onDidChange: this.#changed.event,
      provideTextDocumentContent: (uri) =>
        this.#pages.at(uri.toString()) ?? `This page is not kept any more. ${again}`,
    });
    this.#registered = [provider, this.#changed];
  }

  /** The last part of the path is the title of the tab. */
  async show(path: string, markdown: string): Promise<void> {
    const uri = Uri.from({ scheme: this.#scheme, path });
    this.#pages.keep(uri.toString(), markdown);
    this.#changed.fire(uri);
    await commands.executeCommand("markdown.showPreview", uri);
  }

  dispose(): void {
    for (const each of this.#registered) each.dispose();
  }
}
