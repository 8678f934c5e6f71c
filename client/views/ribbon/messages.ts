import type {
  Panel,
  Place,
  RunOverview,
  TimeWindow,
} from "../../../server/language-server/client-messages/runs.ts";

/** What the ribbon's page is told. */
export type ToRibbon =
  | { readonly kind: "run"; readonly overview: RunOverview }
  /** What was asked for, laid out for so many columns. */
  | { readonly kind: "panel"; readonly panel: Panel; readonly columns: number }
  /** Why what was asked for cannot be shown, as a sentence. */
  | { readonly kind: "cannot"; readonly words: string };

/** What it says. */
export type FromRibbon =
  | { readonly kind: "ready" }
  | ({ readonly kind: "panel"; readonly columns: number } & TimeWindow)
  | { readonly kind: "open"; readonly place: Place }
  /** `window` is what is to be drawn; undefined for the whole run. */
  | { readonly kind: "save"; readonly format: "svg" | "vcd"; readonly window: TimeWindow | undefined };
