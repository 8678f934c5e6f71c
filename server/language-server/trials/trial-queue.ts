import { noChoices, type TrialChoices } from "../../../src-core/trial-details.ts";
import type { Log } from "../guard.ts";
import { type CancelFlag, cancel, newCancelFlag, sharesMemory } from "./cancel-flag.ts";
import type { TrialAnswer } from "./messages.ts";
import { sameTexts, type Texts } from "./texts.ts";
import type { StartWorker, TrialWorker } from "./trial-worker.ts";

/**
 * Milliseconds until the worker has to say something. What a call may do is bounded, and an encoder at that bound takes about a
 * second where this was measured; a firmware has a handful, and a machine ten times as slow must not lose its findings. Whole
 * runs are bounded in virtual time, and take a tenth of this.
 */
export const longestTrial = 120_000;

/** What became of a trial that nobody took back, as far as it is known. */
export type TrialEnd = Exclude<TrialAnswer, { kind: "cancelled" }>;

export interface QueueReceiver {
  /** Again where the first end was not the last. */
  ended(wish: Wish, end: TrialEnd): void;
  readonly log: Log;
}

/** A project that is to be tried with these texts. */
export interface Wish {
  readonly project: string;
  readonly texts: Texts;
  readonly choices: TrialChoices;
}

interface Run {
  readonly wish: Wish;
  /** Undefined where no memory can be shared. */
  readonly cancel: CancelFlag | undefined;
  limit: ReturnType<typeof setTimeout>;
}

/**
 * Has projects tried by a worker, one at a time and the latest edited first. A run goes on only while it is what is
 * wanted most: one that gives way is begun again later, one whose texts are old is dropped. A worker that does not
 * answer, or that cannot be told, is ended; the next run starts another.
 */
export class TrialQueue {
  readonly #startWorker: StartWorker;
  readonly #receiver: QueueReceiver;
  readonly #wishes = new Map<string, Wish>();
  /** By project: the larger the later. */
  readonly #lastEdits = new Map<string, number>();
  #edits = 0;
  #worker: TrialWorker | undefined;
  #run: Run | undefined;
  #stopped = false;

  constructor(startWorker: StartWorker, receiver: QueueReceiver) {
    this.#startWorker = startWorker;
    this.#receiver = receiver;
  }

  /** Has the project tried with these texts instead of any that it was to be tried with. */
  want(project: string, texts: Texts, choices: TrialChoices = noChoices): void {
    const known = this.#wishes.get(project);
    if (known?.choices === choices && sameTexts(known.texts, texts)) return;
    this.#wishes.set(project, { project, texts, choices });
    this.#proceed();
  }

  /** The project's texts are old; it will be wanted again with newer ones. */
  edited(project: string): void {
    this.#lastEdits.set(project, ++this.#edits);
    this.#wishes.delete(project);
    this.#proceed();
  }

  /** The project is gone. */
  drop(project: string): void {
    this.#lastEdits.delete(project);
    this.#wishes.delete(project);
    this.#proceed();
  }

  /** Ends the worker for good. */
  stop(): void {
    this.#stopped = true;
    this.#wishes.clear();
    clearTimeout(this.#run?.limit);
    this.#run = undefined;
    this.#endWorker();
  }

  #proceed(): void {
    const wish = this.#mostWanted();
    if (this.#run !== undefined) {
      if (this.#run.wish !== wish) this.#takeBack(this.#run);
    } else if (wish !== undefined && !this.#stopped) {
      this.#begin(wish);
    }
  }

  #takeBack({ cancel: flag }: Run): void {
    if (flag === undefined) {
      this.#endWorker();
      this.#finish({ kind: "cancelled" });
    } else cancel(flag);
  }

  #mostWanted(): Wish | undefined {
    let most: Wish | undefined;
    for (const wish of this.#wishes.values()) {
      if (most === undefined || this.#lastEdit(wish) > this.#lastEdit(most)) most = wish;
    }
    return most;
  }

  #lastEdit({ project }: Wish): number {
    return this.#lastEdits.get(project) ?? 0;
  }

  #begin(wish: Wish): void {
    const flag = sharesMemory() ? newCancelFlag() : undefined;
    this.#run = { wish, cancel: flag, limit: this.#limit() };
    try {
      this.#worker ??= this.#started();
      this.#worker.post({ ...wish, cancel: flag });
    } catch (error) {
      this.#finish({ kind: "failed", why: error instanceof Error ? error.message : String(error) });
    }
  }

  #limit(): ReturnType<typeof setTimeout> {
    return setTimeout(() => {
      this.#endWorker();
      this.#finish({ kind: "failed", why: `it took longer than ${longestTrial / 1000} s` });
    }, longestTrial);
  }

  #started(): TrialWorker {
    const worker = this.#startWorker({
      answered: (answer) => {
        if (this.#worker !== worker) return;
        if (answer.kind === "tried" && !answer.isLast) this.#tell(answer);
        else this.#finish(answer);
      },
      ended: (why) => {
        if (this.#worker !== worker) return;
        this.#worker = undefined;
        if (this.#run === undefined) this.#receiver.log(`the worker that tries firmware ended: ${why}`);
        else this.#finish({ kind: "failed", why });
      },
    });
    return worker;
  }

  #endWorker(): void {
    const worker = this.#worker;
    this.#worker = undefined;
    worker?.end();
  }

  /** More is to come. */
  #tell(answer: TrialEnd): void {
    const run = this.#run;
    if (run === undefined) return;
    clearTimeout(run.limit);
    run.limit = this.#limit();
    if (this.#wishes.get(run.wish.project) === run.wish) this.#receiver.ended(run.wish, answer);
  }

  #finish(answer: TrialAnswer): void {
    const run = this.#run;
    if (run === undefined) return;
    clearTimeout(run.limit);
    this.#run = undefined;
    const { project } = run.wish;
    if (answer.kind !== "cancelled" && this.#wishes.get(project) === run.wish) {
      this.#wishes.delete(project);
      this.#receiver.ended(run.wish, answer);
    }
    this.#proceed();
  }
}
