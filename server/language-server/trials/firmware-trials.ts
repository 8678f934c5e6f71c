import type { TrialResult } from "../../../src-core/service/service.ts";
import {
  type FunctionName,
  type Movement,
  noChoices,
  type RunChoice,
  type TrialChoices,
} from "../../../src-core/trial-details.ts";
import type { Log } from "../guard.ts";
import { sameTexts, type Texts } from "./texts.ts";
import { type TrialEnd, TrialQueue, type Wish } from "./trial-queue.ts";
import type { StartWorker } from "./trial-worker.ts";

/** What trying firmware out gave, as far as it is known. */
export interface Trials {
  /** For these texts of the project, as far as it is known; the rest is found out. */
  resultOf(project: string, texts: Texts): TrialResult | undefined;
  /** One of the project's texts changed: what is being found out would be of no use. */
  edited(project: string): void;
  /** The project is gone. */
  drop(project: string): void;
}

export interface TrialReceiver {
  /** `resultOf` knows more than it did. */
  ready(project: string): void;
  readonly log: Log;
}

interface Kept {
  readonly texts: Texts;
  readonly choices: TrialChoices;
  readonly result: TrialResult;
  /** There is no more to find out. */
  readonly isAll: boolean;
}

/** Has firmware tried in a worker and keeps each project's last result, also that it could not be tried. */
export class FirmwareTrials implements Trials {
  readonly #queue: TrialQueue;
  readonly #receiver: TrialReceiver;
  readonly #choices = new Map<string, TrialChoices>();
  readonly #kept = new Map<string, Kept>();
  /** Projects whose failures are in the log already; what fails once is likely to fail after each edit. */
  readonly #logged = new Set<string>();

  constructor(startWorker: StartWorker, receiver: TrialReceiver) {
    this.#receiver = receiver;
    this.#queue = new TrialQueue(startWorker, {
      ended: (wish, end) => this.#keep(wish, end),
      log: receiver.log,
    });
  }

  resultOf(project: string, texts: Texts): TrialResult | undefined {
    const kept = this.#kept.get(project);
    const known = kept !== undefined && sameTexts(kept.texts, texts) ? kept : undefined;
    const choices = this.#choicesFor(project);
    if (known?.isAll !== true || known.choices !== choices) this.#queue.want(project, texts, choices);
    return known?.result;
  }

  /** From now on the function is tried with this movement, too. */
  chooseMovement(project: string, subject: FunctionName, movement: Movement): void {
    const { movements, run } = this.#choicesFor(project);
    const others = movements.filter(
      ({ subject: { file, name } }) => file !== subject.file || name !== subject.name,
    );
    this.#choose(project, { movements: [...others, { subject, movement }], run });
  }

  /** From now on the firmware is run so, too. */
  chooseRun(project: string, run: RunChoice): void {
    this.#choose(project, { ...this.#choicesFor(project), run });
  }

  edited(project: string): void {
    this.#queue.edited(project);
  }

  drop(project: string): void {
    this.#kept.delete(project);
    this.#logged.delete(project);
    this.#choices.delete(project);
    this.#queue.drop(project);
  }

  stop(): void {
    this.#queue.stop();
  }

  #choicesFor(project: string): TrialChoices {
    return this.#choices.get(project) ?? noChoices;
  }

  #choose(project: string, choices: TrialChoices): void {
    this.#choices.set(project, choices);
    // Who asks for what is known has the rest found out.
    this.#receiver.ready(project);
  }

  #keep(wish: Wish, end: TrialEnd): void {
    const { project } = wish;
    if (end.kind === "tried") this.#logged.delete(project);
    else if (!this.#logged.has(project)) {
      this.#logged.add(project);
      this.#receiver.log(`${project} could not be tried: ${end.why}`);
    }
    this.#kept.set(project, this.#keptOf(wish, end));
    this.#receiver.ready(project);
  }

  #keptOf({ project, texts, choices }: Wish, end: TrialEnd): Kept {
    if (end.kind === "tried") return { texts, choices, result: end.result, isAll: end.isLast };
    const before = this.#kept.get(project);
    const known = before !== undefined && sameTexts(before.texts, texts) ? before.result : undefined;
    const failure = { why: end.why, partsRan: known !== undefined };
    return { texts, choices, result: { ...(known ?? nothingTried), failure }, isAll: true };
  }
}

const nothingTried: TrialResult = {
  findings: [],
  notUnderstood: [],
  proposals: [],
  whole: false,
  ran: false,
  reports: [],
  wholeRuns: undefined,
  chosenRun: undefined,
  failure: undefined,
};
