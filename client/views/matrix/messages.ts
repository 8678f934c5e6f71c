import type { CellVerdict, MatrixPlan } from "../../../server/language-server/client-messages/matrix.ts";

/** What the matrix's page is told. */
export type ToMatrix =
  | { readonly kind: "plan"; readonly name: string; readonly plan: MatrixPlan }
  | { readonly kind: "cell"; readonly cell: CellVerdict }
  /** All is run, or it was cancelled. */
  | { readonly kind: "end" };

/** What it says. */
export type FromMatrix =
  | { readonly kind: "ready" }
  | { readonly kind: "cancel" }
  /** The run of a cell is to be shown. */
  | { readonly kind: "show"; readonly stroke: string; readonly mouse: string; readonly pc: string };
