/** A thread of its own, whatever platform it runs on, that answers each request with one answer. */
export interface WorkerOf<Request> {
  post(request: Request): void;
  /** Stops it at once, whatever it is doing. It reports nothing any more. */
  end(): void;
}

/** What a worker reports. */
export interface EventsOf<Answer> {
  answered(answer: Answer): void;
  /** It ended by itself and can be asked nothing more. `why` fits behind a colon. */
  ended(why: string): void;
}

export type StarterOf<Request, Answer> = (events: EventsOf<Answer>) => WorkerOf<Request>;
