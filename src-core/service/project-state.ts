import type { CheckResult } from "../check-result.ts";
import type { Project } from "../project/project.ts";
import type { SourceHost } from "../reader/source-host.ts";
import { checkReading, tryReading } from "./check.ts";
import type { ProjectReader, ProjectReading } from "./project-reading.ts";
import type { TrialResult } from "./service.ts";

/** One project between requests: its last reading and result, for as long as its files stay as they are. */
export class ProjectState {
  readonly #host: SourceHost;
  readonly #reader: ProjectReader;
  #project: Project;
  #reading: ProjectReading | undefined;
  #result: CheckResult | undefined;
  #tried: TrialResult | undefined;

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

  reading(): ProjectReading {
    const last = this.#reading;
    if (last !== undefined && this.#isStillTrue(last)) return last;
    const reading = this.#reader.read(this.#project);
    this.#reading = reading;
    this.#result = undefined;
    this.#tried = undefined;
    return reading;
  }

  result(): CheckResult {
    const reading = this.reading();
    this.#result ??= checkReading(reading, this.#tried);
    return this.#result;
  }

  /** What running the firmware shows; kept until the files change. Undefined when cancelled. */
  tried(cancelled: (() => boolean) | undefined): TrialResult | undefined {
    const reading = this.reading();
    const tried = this.#tried ?? tryReading(reading, cancelled);
    if (tried !== undefined) this.takeOver(tried);
    return tried;
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
