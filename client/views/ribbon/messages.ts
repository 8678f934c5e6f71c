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
  /** Sources that are not any more what the run was made of. */
  | { readonly kind: "edited"; readonly files: readonly string[] }
  /** To be said over what is chosen. */
  | { readonly kind: "say"; readonly words: string }
  /** Why what was asked for cannot be shown, as a sentence. */
  | { readonly kind: "cannot"; readonly words: string };

/** What it says. */
export type FromRibbon =
  | { readonly kind: "ready" }
  | ({ readonly kind: "panel"; readonly columns: number } & TimeWindow)
  | { readonly kind: "open"; readonly place: Place }
  /** The same is to be run once more, of the sources as they are. */
  | { readonly kind: "again" }
  /** `window` is what is to be drawn; undefined for the whole run. */
  | { readonly kind: "save"; readonly format: "svg" | "vcd"; readonly window: TimeWindow | undefined };
