import type { EventsOf, StarterOf, WorkerOf } from "../../workers/worker.ts";
import type { TrialAnswer, TrialRequest } from "./messages.ts";

/** A thread of its own that tries firmware out. */
export type TrialWorker = WorkerOf<TrialRequest>;

/** Why it ended fits behind "the firmware could not be tried:". */
export type WorkerEvents = EventsOf<TrialAnswer>;

export type StartWorker = StarterOf<TrialRequest, TrialAnswer>;
