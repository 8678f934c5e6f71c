import { isCancelled } from "../../../../server/language-server/trials/cancel-flag.ts";
import type { TrialAnswer, TrialRequest } from "../../../../server/language-server/trials/messages.ts";
import type { WorkerEvents } from "../../../../server/language-server/trials/trial-worker.ts";
import type { TrialResult } from "../../../../src-core/service/service.ts";

/** Workers that do as the test says, and a record of what they were asked. */
export class FakeWorkers {
  /** Every worker that was started, in order. */
  readonly started: FakeWorker[] = [];

  readonly start = (events: WorkerEvents): FakeWorker => {
    const worker = new FakeWorker(events);
    this.started.push(worker);
    return worker;
  };

  /** The worker that was started last. */
  get last(): FakeWorker {
    const last = this.started.at(-1);
    if (last === undefined) throw new Error("no worker was started");
    return last;
  }
}

class FakeWorker {
  readonly #events: WorkerEvents;
  readonly requests: TrialRequest[] = [];
  isEnded = false;

  constructor(events: WorkerEvents) {
    this.#events = events;
  }

  post(request: TrialRequest): void {
    this.requests.push(request);
  }

  end(): void {
    this.isEnded = true;
  }

  get request(): TrialRequest {
    const request = this.requests.at(-1);
    if (request === undefined) throw new Error("nothing was asked");
    return request;
  }

  get isCancelled(): boolean {
    return isCancelled(this.request.cancel);
  }

  answer(answer: TrialAnswer): void {
    this.#events.answered(answer);
  }

  die(why: string): void {
    this.#events.ended(why);
  }
}

/** A result that can be told from others by its one message. */
export function resultSaying(message: string): TrialResult {
  return {
    findings: [],
    notUnderstood: [{ span: { file: "/p/a.c", start: 0, end: 0 }, message }],
    proposals: [],
    whole: true,
    ran: true,
    reports: [],
    wholeRuns: undefined,
    chosenRun: undefined,
    failure: undefined,
  };
}
