import { type CompletionItem, CompletionItemKind, MarkupKind } from "vscode-languageserver";
import type { Completion, CompletionKind } from "../../../src-core/service/service.ts";
import { Positions } from "../positions.ts";
import { answer, type FeatureContext, firstAnswer, subjectOf } from "./features.ts";

const itemKinds: Readonly<Record<CompletionKind, CompletionItemKind>> = {
  directive: CompletionItemKind.Keyword,
  key: CompletionItemKind.Property,
  value: CompletionItemKind.EnumMember,
  field: CompletionItemKind.Field,
  rule: CompletionItemKind.Reference,
  chip: CompletionItemKind.Module,
  pin: CompletionItemKind.Constant,
};

export function registerCompletion(context: FeatureContext): void {
  const { connection, service, files } = context;
  connection.onCompletion(({ textDocument, position }, token) =>
    answer(context, "completion", token, [], (): CompletionItem[] => {
      const subject = subjectOf(context, textDocument.uri);
      if (subject === undefined) return [];
      const offset = subject.document.offsetAt(position);
      const positions = new Positions(files);
      const found = firstAnswer(subject.projects, (project) => {
        const completions = service.complete(project, subject.file, offset);
        return completions.length === 0 ? undefined : completions;
      });
      return (found ?? []).map((completion, index) => itemOf(completion, index, positions));
    }),
  );
}

/** The core gives completions in the best order; editors sort by `sortText`. */
function itemOf(completion: Completion, index: number, positions: Positions): CompletionItem {
  return {
    label: completion.label,
    kind: itemKinds[completion.kind],
    detail: completion.detail,
    ...(completion.documentation === ""
      ? {}
      : { documentation: { kind: MarkupKind.Markdown, value: completion.documentation } }),
    sortText: String(index).padStart(5, "0"),
    textEdit: { range: positions.rangeOf(completion.edit.span), newText: completion.edit.text },
  };
}
