import type { CheckResult } from "../check-result.ts";
import { forgetOrders } from "../facts/walk/in-order.ts";
import type { Project } from "../project/project.ts";
import type { SourceHost } from "../reader/source-host.ts";
import { noChoices, type TrialChoices } from "../trial-details.ts";
import { type Chosen, checkReading, judged, type PartTrials, tryParts } from "./check.ts";
import type { ProjectReader, ProjectReading } from "./project-reading.ts";
import type { TrialResult } from "./service.ts";
import { type ChosenFirmwareRun, runChosen } from "./whole-runs/chosen-run.ts";
import { runWhole, type WholeRuns } from "./whole-runs/run-whole.ts";

/** One project between requests: its last reading and result, for as long as its files stay as they are. */
export class ProjectState {
  readonly #host: SourceHost;
  readonly #reader: ProjectReader;
  #project: Project;
  #reading: ProjectReading | undefined;
  #result: CheckResult | undefined;
  #parts: PartTrials | undefined;
  #whole: WholeRuns | undefined;
  #choices = noChoices;
  /** Of the choices. */
  #run: ChosenFirmwareRun | undefined;
  #tried: TrialResult | undefined;
  #before: TrialResult | undefined;
  /** The last result with all that there is to know. */
  #all: TrialResult | undefined;

  constructor(host: SourceHost, reader: ProjectReader, project: Project) {
    this.#host = host;
    this.#reader = reader;
    this.#project = project;
  }

  /** The project as it was found again: files may have come or gone, settings may have changed. */
  replace(project: Project): void {
    this.#project = project;
    this.#reading = undefined;
  }

  get project(): Project {
    return this.#project;
  }

  reading(): ProjectReading {
    if (this.#reading !== undefined && this.#isStillTrue(this.#reading)) return this.#reading;
    this.#forget();
    this.#reading = this.#reader.read(this.#project);
    return this.#reading;
  }

  /** Lets go of the last reading before the next is made, so that a collection meanwhile does not copy it. */
  #forget(): void {
    forgetOrders();
    this.#keepBefore();
    this.#reading = undefined;
    this.#result = undefined;
    this.#parts = undefined;
    this.#whole = undefined;
    this.#run = undefined;
    this.#tried = undefined;
  }

  result(): CheckResult {
    const reading = this.reading();
    this.#result ??= checkReading(reading, this.#tried);
    return this.#result;
  }

  /** What running parts of the firmware shows; kept until the files change. Undefined when cancelled. */
  tried(cancelled: (() => boolean) | undefined): TrialResult | undefined {
    const reading = this.reading();
    if (this.#tried !== undefined) return this.#tried;
    this.#parts ??= tryParts(reading, cancelled);
    if (this.#parts === undefined) return undefined;
    const tried = judged(reading, this.#parts, undefined, this.#chosen());
    this.takeOver(tried);
    return tried;
  }

  /** The same, and what running it whole shows. */
  ran(cancelled: (() => boolean) | undefined): TrialResult | undefined {
    const reading = this.reading();
    if (this.#all !== undefined && this.#all === this.#tried) return this.#all;
    this.#parts ??= tryParts(reading, cancelled);
    this.#whole ??= this.#parts && runWhole(reading, cancelled);
    if (this.#parts === undefined || this.#whole === undefined) return undefined;
    const { run } = this.#choices;
    if (run !== undefined) {
      this.#run ??= runChosen(reading, run, cancelled);
      if (this.#run === undefined) return undefined;
    }
    const tried = judged(reading, this.#parts, this.#whole, this.#chosen());
    this.#all = tried;
    this.takeOver(tried);
    return tried;
  }

  /** What somebody wants to see tried, from now on. */
  choose(choices: TrialChoices): void {
    if (JSON.stringify(choices) === JSON.stringify(this.#choices)) return;
    if (JSON.stringify(choices.run) !== JSON.stringify(this.#choices.run)) this.#run = undefined;
    this.#choices = choices;
    this.#tried = undefined;
    this.#result = undefined;
  }

  /** What was known of the texts before the last change; a run that was not made of one of them counts from the one before. */
  before(): TrialResult | undefined {
    this.reading();
    return this.#before;
  }

  #keepBefore(): void {
    const [last, older] = [this.#tried, this.#before];
    if (last === undefined) return;
    this.#before = {
      ...last,
      wholeRuns: last.wholeRuns ?? older?.wholeRuns,
      chosenRun: last.chosenRun ?? older?.chosenRun,
    };
  }

  #chosen(): Chosen {
    return { choices: this.#choices, run: this.#run };
  }

  /** What `tried` gave for the files as they are; undefined where it was not asked yet. */
  known(): TrialResult | undefined {
    this.reading();
    return this.#tried;
  }

  /** The same, found by someone else over the same files. */
  takeOver(tried: TrialResult): void {
    // What was tried before the texts were read is forgotten with the reading.
    this.reading();
    if (tried === this.#tried) return;
    this.#tried = tried;
    this.#result = undefined;
  }

  #isStillTrue({ files }: ProjectReading): boolean {
    for (const [file, lexed] of files) if (this.#host.readText(file) !== lexed.text) return false;
    return true;
  }
}
