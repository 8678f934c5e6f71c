import { RequestType } from "vscode-languageserver";
import { topicsAsMarkdown } from "../../../src-core/present/markdown/topics-as-markdown.ts";
import { explainTerm, topicBook } from "../../../src-core/service/explain-term.ts";
import {
  type ExplainAnswer,
  type ExplainedTerm,
  type ExplainParams,
  explainRequest,
  termsRequest,
} from "../client-messages/explain.ts";
import { answer, type FeatureContext } from "./features.ts";

const explain = new RequestType<ExplainParams, ExplainAnswer, void>(explainRequest);
const terms = new RequestType<object, readonly ExplainedTerm[], void>(termsRequest);

export function registerExplain(context: FeatureContext): void {
  const { connection } = context;
  connection.onRequest(explain, ({ term }, token) =>
    answer(context, "explain", token, { kind: "unknown", near: [] }, (): ExplainAnswer => {
      const found = explainTerm(String(term));
      if (found.kind === "unknown") return found;
      return { kind: "page", markdown: topicsAsMarkdown(found.topics) };
    }),
  );
  connection.onRequest(terms, (_nothing, token) =>
    answer(context, "terms", token, [], (): readonly ExplainedTerm[] =>
      topicBook()
        .all()
        .map(({ name, kind, title }) => ({ name, kind, title })),
    ),
  );
}
