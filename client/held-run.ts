import type { CancellationToken } from "vscode";
import {
  type CannotRun,
  type CloseRunParams,
  closeRunNotification,
  type PanelAnswer,
  type PanelParams,
  type Place,
  panelRequest,
  type RunAnswer,
  type RunOverview,
  type RunParams,
  type RunPlaceAnswer,
  type RunSourcesAnswer,
  type RunTextAnswer,
  type RunTextParams,
  runPlaceRequest,
  runRequest,
  runSourcesRequest,
  runTextRequest,
} from "../server/language-server/client-messages/runs.ts";
import type { Checker } from "./checker.ts";

/** Who runs firmware. */
export type Runner = Pick<Checker, "session" | "request" | "ask" | "notify">;

/** A run that a server holds, until it is closed or that server is gone. What is asked for then is undefined. */
export class HeldRun {
  readonly kind = "run";
  /** URI of the folder that the run's files are named from. */
  readonly root: string;
  readonly overview: RunOverview;
  readonly #runner: Runner;
  readonly #session: number;
  readonly #run: number;

  constructor(runner: Runner, session: number, { run, root, overview }: Extract<RunAnswer, { kind: "run" }>) {
    this.#runner = runner;
    this.#session = session;
    this.#run = run;
    this.root = root;
    this.overview = overview;
  }

  panel(params: Omit<PanelParams, "run">): Promise<PanelAnswer | undefined> {
    return this.#ask<PanelAnswer>(panelRequest, params);
  }

  text(params: Omit<RunTextParams, "run">): Promise<RunTextAnswer | undefined> {
    return this.#ask<RunTextAnswer>(runTextRequest, params);
  }

  /** Which sources were edited since. */
  sources(): Promise<RunSourcesAnswer | undefined> {
    return this.#ask<RunSourcesAnswer>(runSourcesRequest, {});
  }

  /** Where a place of the run is now. */
  place(place: Place): Promise<RunPlaceAnswer | undefined> {
    return this.#ask<RunPlaceAnswer>(runPlaceRequest, { place });
  }

  close(): void {
    const params: CloseRunParams = { run: this.#run };
    if (this.#isHeld) void this.#runner.notify(closeRunNotification, params);
  }

  /** Another server knows nothing of a run, or another one by its number. */
  get #isHeld(): boolean {
    return this.#session === this.#runner.session;
  }

  async #ask<Answer>(method: string, params: object): Promise<Answer | undefined> {
    return this.#isHeld ? this.#runner.ask<Answer>(method, { ...params, run: this.#run }) : undefined;
  }
}

/** Has a firmware run; undefined where the user does not want it any more, or was told why there is none. */
export async function heldRun(
  runner: Runner,
  params: RunParams,
  cancelled: CancellationToken,
): Promise<HeldRun | CannotRun | undefined> {
  // By the time of the answer there may be another server.
  const { session } = runner;
  const answer = await runner.request<RunAnswer>(runRequest, params, cancelled);
  const run = answer?.kind === "run" ? new HeldRun(runner, session, answer) : answer;
  if (!cancelled.isCancellationRequested) return run;
  // It may have been on its way already.
  if (run?.kind === "run") run.close();
  return undefined;
}

/** As a sentence; `undefined` where the server that held the run is gone. */
export function whyNot(answer: CannotRun | undefined): string {
  if (answer !== undefined) return `The checker could not answer: ${answer.message}.`;
  return "The checker was restarted and does not hold this run any more. Run it again to look closer.";
}
