import { type Hover, MarkupKind } from "vscode-languageserver";
import { Positions } from "../positions.ts";
import { answer, type FeatureContext, firstAnswer, subjectOf } from "./features.ts";

export function registerHover(context: FeatureContext): void {
  const { connection, service, files } = context;
  connection.onHover(({ textDocument, position }, token) =>
    answer(context, "hover", token, null, (): Hover | null => {
      const subject = subjectOf(context, textDocument.uri);
      if (subject === undefined) return null;
      const offset = subject.document.offsetAt(position);
      const hover = firstAnswer(subject.projects, (project) => service.hover(project, subject.file, offset));
      if (hover === undefined) return null;
      return {
        contents: { kind: MarkupKind.Markdown, value: hover.markdown },
        range: new Positions(files).rangeOf(hover.span),
      };
    }),
  );
}
