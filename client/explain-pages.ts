import { type Disposable, window } from "vscode";
import {
  type ExplainAnswer,
  type ExplainedTerm,
  explainRequest,
  termsRequest,
} from "../server/language-server/client-messages/explain.ts";
import type { Checker } from "./checker.ts";
import { MarkdownPages } from "./markdown-pages.ts";

/** Pages that say what a byte, quantity, layout, line format, chip or rule is. */
export class ExplainPages implements Disposable {
  readonly #checker: Checker;
  readonly #pages = new MarkdownPages("edgewise-explain", "*Edgewise: Explain a Term...* shows it again.");

  constructor(checker: Checker) {
    this.#checker = checker;
  }

  /** Shows the page of `term`, or of the one that is picked where none is given. */
  async ask(term: unknown): Promise<void> {
    const wanted = typeof term === "string" ? term : await this.#picked();
    if (wanted === undefined) return;
    const answer = await this.#checker.request<ExplainAnswer>(explainRequest, { term: wanted });
    if (answer === undefined) return;
    // A rule's id has a slash.
    if (answer.kind === "page") await this.#pages.show(`/${wanted.replaceAll("/", " ")}.md`, answer.markdown);
    else void window.showInformationMessage(unknownTerm(wanted, answer.near));
  }

  dispose(): void {
    this.#pages.dispose();
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
}

function unknownTerm(term: string, near: readonly string[]): string {
  const meant = near.length === 0 ? "" : ` Did you mean ${near.join(" or ")}?`;
  return `Nothing is called "${term}".${meant}`;
}
