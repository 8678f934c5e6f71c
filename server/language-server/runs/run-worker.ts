import type { StarterOf, WorkerOf } from "../../workers/worker.ts";
import type { RunReply, RunRequest } from "./messages.ts";

export type StartRunWorker = StarterOf<RunRequest, RunReply>;

/** A worker that is asked one thing after the other, and answers in that order. */
export class RunWorker {
  readonly #worker: WorkerOf<RunRequest>;
  readonly #waiting: ((reply: RunReply) => void)[] = [];
  #ended: string | undefined;

  constructor(start: StartRunWorker) {
    this.#worker = start({
      answered: (reply) => this.#waiting.shift()?.(reply),
      ended: (why) => this.#giveUp(why),
    });
  }

  /** What the worker says; `cannot` where it ends before. */
  ask(request: RunRequest): Promise<RunReply> {
    if (this.#ended !== undefined) return Promise.resolve({ kind: "cannot", message: this.#ended });
    return new Promise((resolve) => {
      this.#waiting.push(resolve);
      this.#worker.post(request);
    });
  }

  /** Ends it at once, whatever it is doing; `why` is told to who still waits. */
  end(why: string): void {
    this.#worker.end();
    this.#giveUp(why);
  }

  #giveUp(why: string): void {
    this.#ended = why;
    for (const resolve of this.#waiting.splice(0)) resolve({ kind: "cannot", message: why });
  }
}
