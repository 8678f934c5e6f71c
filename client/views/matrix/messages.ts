import type { CellVerdict, MatrixPlan } from "../../../server/language-server/client-messages/matrix.ts";

/** What the matrix's page is told. */
export type ToMatrix =
  | { readonly kind: "plan"; readonly name: string; readonly plan: MatrixPlan }
  | { readonly kind: "cell"; readonly cell: CellVerdict }
  /** Sources that are not any more what was run. */
  | { readonly kind: "edited"; readonly files: readonly string[] }
  | { readonly kind: "end"; readonly why: EndOfMatrix };

/**
 * Why no more cells come: all are run, the user did not want more, the server that ran them is gone, or what the server says
 * in one sentence.
 */
export type EndOfMatrix =
  | { readonly kind: "done" | "cancelled" | "lost" }
  | { readonly kind: "cannot"; readonly message: string };

/** What it says. */
export type FromMatrix =
  | { readonly kind: "ready" }
  | { readonly kind: "cancel" }
  /** All cells are to be run once more. */
  | { readonly kind: "again" }
  /** The run of a cell is to be shown. */
  | { readonly kind: "show"; readonly stroke: string; readonly mouse: string; readonly pc: string };
