import type { CancellationToken } from "vscode-languageserver";
import type { SimulationChoice } from "../../../src-core/simulation-result.ts";
import type {
  CannotRun,
  PanelAnswer,
  PanelParams,
  RunAnswer,
  RunTextAnswer,
  RunTextParams,
} from "../client-messages/runs.ts";
import type { Texts } from "../trials/texts.ts";
import { uriOfPath } from "../uri-paths.ts";
import type { RunReply, RunRequest } from "./messages.ts";
import { RunWorker, type StartRunWorker } from "./run-worker.ts";

/** What a run was made of. */
export interface RunSources {
  readonly project: string;
  /** The folder that its files are named from. */
  readonly root: string;
  readonly texts: Texts;
}

/** Runs that somebody looks at. Each is held by a worker of its own until it is closed. */
export class ShownRuns {
  readonly #start: StartRunWorker;
  readonly #workers = new Map<number, RunWorker>();
  readonly #sources = new Map<number, RunSources>();
  #last = 0;

  constructor(start: StartRunWorker) {
    this.#start = start;
  }

  /** Runs a firmware; `cancelled` ends the run at once. */
  async run(
    project: string,
    texts: Texts,
    choice: SimulationChoice,
    cancelled: CancellationToken,
  ): Promise<RunAnswer> {
    const worker = new RunWorker(this.#start);
    const listening = cancelled.onCancellationRequested(() => worker.end("the run was cancelled"));
    const run = ++this.#last;
    this.#workers.set(run, worker);
    const reply = await worker.ask({ kind: "run", project, texts, choice });
    listening.dispose();
    if (reply.kind === "run") {
      this.#sources.set(run, { project, root: reply.root, texts });
      return { kind: "run", run, root: uriOfPath(reply.root), overview: reply.overview };
    }
    this.close(run);
    return cannot(reply);
  }

  async panel({ run, from, to, columns }: PanelParams): Promise<PanelAnswer> {
    const reply = await this.#ask(run, { kind: "panel", from, to, columns });
    return reply.kind === "panel" ? reply : cannot(reply);
  }

  async text({ run, format, window }: RunTextParams): Promise<RunTextAnswer> {
    const reply = await this.#ask(run, { kind: "text", format, window });
    return reply.kind === "text" ? reply : cannot(reply);
  }

  /** Undefined for a run that is not held any more. */
  sourcesOf(run: number): RunSources | undefined {
    return this.#sources.get(run);
  }

  close(run: number): void {
    this.#workers.get(run)?.end("the run was closed");
    this.#sources.delete(run);
    this.#workers.delete(run);
  }

  /** Closes all. */
  stop(): void {
    for (const run of [...this.#workers.keys()]) this.close(run);
  }

  async #ask(run: number, request: RunRequest): Promise<RunReply> {
    const worker = this.#workers.get(run);
    return worker === undefined ? notHeld : worker.ask(request);
  }
}

export const notHeld: CannotRun = { kind: "cannot", message: "the run is not held any more" };

function cannot(reply: RunReply): CannotRun {
  return reply.kind === "cannot" ? reply : { kind: "cannot", message: "the run gave nothing" };
}
