import { type CodeAction, CodeActionKind, type Diagnostic, type WorkspaceEdit } from "vscode-languageserver";
import type { Edit } from "../../../src-core/finding.ts";
import type { Action } from "../../../src-core/service/service.ts";
import { Positions } from "../positions.ts";
import { uriOfPath } from "../uri-paths.ts";
import { answer, type FeatureContext, subjectOf } from "./features.ts";

export function registerCodeActions(context: FeatureContext): void {
  const { connection, service, files } = context;
  connection.onCodeAction(({ textDocument, range, context: asked }, token) =>
    answer(context, "code actions", token, [], (): CodeAction[] => {
      const subject = subjectOf(context, textDocument.uri);
      if (subject === undefined) return [];
      const span = {
        file: subject.file,
        start: subject.document.offsetAt(range.start),
        end: subject.document.offsetAt(range.end),
      };
      const positions = new Positions(files);
      const actions = subject.projects.flatMap((project) => service.actions(project, span));
      const offered = new Map(
        actions.map((action) => {
          const codeAction = codeActionOf(action, positions, asked.diagnostics);
          return [JSON.stringify([codeAction.title, codeAction.edit]), codeAction];
        }),
      );
      return [...offered.values()];
    }),
  );
}

function codeActionOf(action: Action, positions: Positions, shown: readonly Diagnostic[]): CodeAction {
  const { finding } = action;
  const diagnostics =
    finding === undefined
      ? []
      : shown.filter((one) => one.source === "edgewise" && one.code === finding.rule);
  return {
    title: action.title,
    kind: CodeActionKind.QuickFix,
    diagnostics,
    isPreferred: action.kind === "fix",
    edit: workspaceEdit(action.edits, positions),
  };
}

function workspaceEdit(edits: readonly Edit[], positions: Positions): WorkspaceEdit {
  const changes: NonNullable<WorkspaceEdit["changes"]> = {};
  for (const { span, text } of edits) {
    const uri = uriOfPath(span.file);
    const inFile = changes[uri] ?? [];
    inFile.push({ range: positions.rangeOf(span), newText: text });
    changes[uri] = inFile;
  }
  return { changes };
}
