import type { InlayHint } from "vscode-languageserver";
import { answer, type FeatureContext, subjectOf } from "./features.ts";

/** Hints behind numbers, where the client's settings ask for them. */
export function registerInlayHints(context: FeatureContext): void {
  const { connection, service, settings } = context;
  connection.languages.inlayHint.on(({ textDocument, range }, token) =>
    answer(context, "inlay hints", token, [], (): InlayHint[] => {
      const subject = settings.now.inlayHints ? subjectOf(context, textDocument.uri) : undefined;
      const [project] = subject?.projects ?? [];
      if (subject === undefined || project === undefined) return [];
      const { document, file } = subject;
      const from = document.offsetAt(range.start);
      const to = document.offsetAt(range.end);
      return service.inlayHints(project, file, from, to).map(({ offset, text }) => ({
        position: document.positionAt(offset),
        label: text,
        paddingLeft: true,
      }));
    }),
  );
}
