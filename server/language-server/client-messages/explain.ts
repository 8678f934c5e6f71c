/** Request: what a term is. Its parameters are an `ExplainParams`, its answer an `ExplainAnswer`. */
export const explainRequest = "edgewise/explain";

/** Request with an empty object: all terms, as an `ExplainedTerm[]`. */
export const termsRequest = "edgewise/terms";

export interface ExplainParams {
  readonly term: string;
}

export type ExplainAnswer =
  | { readonly kind: "page"; readonly markdown: string }
  /** There is no such term; `near` may have been meant. */
  | { readonly kind: "unknown"; readonly near: readonly string[] };

export interface ExplainedTerm {
  readonly name: string;
  readonly kind: string;
  readonly title: string;
}
