import type { TrialAnswer, TrialRequest } from "./messages.ts";

/** A thread of its own that tries firmware out, whatever platform it runs on. */
export interface TrialWorker {
  post(request: TrialRequest): void;
  /** Stops it at once, whatever it is doing. It reports nothing any more. */
  end(): void;
}

/** What a worker reports. */
export interface WorkerEvents {
  answered(answer: TrialAnswer): void;
  /** It ended by itself and can be asked nothing more. `why` fits behind "the firmware could not be tried:". */
  ended(why: string): void;
}

export type StartWorker = (events: WorkerEvents) => TrialWorker;
