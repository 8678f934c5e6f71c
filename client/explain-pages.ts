import { commands, type Disposable, Uri, window, workspace } from "vscode";
import {
  type ExplainAnswer,
  type ExplainedTerm,
  explainRequest,
  termsRequest,
} from "../server/language-server/client-messages/explain.ts";
import type { Checker } from "./checker.ts";

const SCHEME = "edgewise-explain";

/** Pages that say what a byte, quantity, layout, line format, chip or rule is. */
export class ExplainPages implements Disposable {
  readonly #checker: Checker;
  readonly #provider: Disposable;
  /** Markdown by the address of its page. */
  readonly #pages = new Map<string, string>();

  constructor(checker: Checker) {
    this.#checker = checker;
    this.#provider = workspace.registerTextDocumentContentProvider(SCHEME, {
      provideTextDocumentContent: (uri) => this.#pages.get(uri.toString()) ?? "",
    });
  }

  /** Shows the page of `term`, or of the one that is picked where none is given. */
  async ask(term: unknown): Promise<void> {
    const wanted = typeof term === "string" ? term : await this.#picked();
    if (wanted === undefined) return;
    const answer = await this.#checker.request<ExplainAnswer>(explainRequest, { term: wanted });
    if (answer === undefined) return;
    if (answer.kind === "page") await this.#show(wanted, answer.markdown);
    else void window.showInformationMessage(unknownTerm(wanted, answer.near));
  }

  dispose(): void {
    this.#provider.dispose();
  }

  async #picked(): Promise<string | undefined> {
    const terms = await this.#checker.request<readonly ExplainedTerm[]>(termsRequest, {});
    if (terms === undefined) return undefined;
    const items = terms.map(({ name, kind, title }) => ({ label: name, description: title, detail: kind }));
    const picked = await window.showQuickPick(items, {
      title: "Explain a Term",
      placeHolder: "A byte, quantity, layout, chip or rule",
      matchOnDescription: true,
      matchOnDetail: true,
    });
    return picked?.label;
  }

  async #show(term: string, markdown: string): Promise<void> {
    // The last part of the path is the title of the tab; a rule's id has a slash.
    const uri = Uri.from({ scheme: SCHEME, path: `/${term.replaceAll("/", " ")}.md` });
    this.#pages.set(uri.toString(), markdown);
    await commands.executeCommand("markdown.showPreview", uri);
  }
}

function unknownTerm(term: string, near: readonly string[]): string {
  const meant = near.length === 0 ? "" : ` Did you mean ${near.join(" or ")}?`;
  return `Nothing is called "${term}".${meant}`;
}
