import type { CellChoice, CellResult } from "../../../src-core/matrix-result.ts";
import type { Panel, TimeWindow } from "../../../src-core/present/ribbon/ribbon.ts";
import type { SimulationChoice } from "../../../src-core/simulation-result.ts";
import type { RunOverview, RunTextParams } from "../client-messages/runs.ts";
import type { Texts } from "../trials/texts.ts";
import type { Listed } from "../with-listings.ts";

/** What passes between the language server and a worker that runs firmware to show it: plain data, one answer for each request. */
export type RunRequest =
  /** Runs and keeps the run. */
  | ({ readonly kind: "run"; readonly choice: SimulationChoice } & Read)
  /** Runs a cell of a matrix and keeps nothing. */
  | ({ readonly kind: "cell"; readonly cell: CellChoice } & Read)
  /** A window of the run that was kept. */
  | ({ readonly kind: "panel"; readonly columns: number } & TimeWindow)
  | ({ readonly kind: "text" } & Omit<RunTextParams, "run">);

interface Read extends Listed {
  /** Its id, at which the worker's own service finds it too. */
  readonly project: string;
  /** All files that the server read for it. What else is asked for, such as folders, the worker reads itself. */
  readonly texts: Texts;
}

export type RunReply =
  /** In one sentence, why not. */
  | { readonly kind: "cannot"; readonly message: string }
  | { readonly kind: "run"; readonly root: string; readonly overview: RunOverview }
  | { readonly kind: "cell"; readonly result: CellResult }
  | { readonly kind: "panel"; readonly panel: Panel }
  | { readonly kind: "text"; readonly text: string };
