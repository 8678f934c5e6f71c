import type { SourceHost } from "../../../src-core/reader/source-host.ts";
import type { Service } from "../../../src-core/service/service.ts";
import type { ServiceMaker } from "../serve.ts";
import { isCancelled } from "./cancel-flag.ts";
import { HandedOverFiles } from "./handed-over-files.ts";
import type { TrialAnswer, TrialRequest } from "./messages.ts";

/** The worker's side: tries firmware out with a service of its own. */
export class TrialAnswerer {
  readonly #files: HandedOverFiles;
  readonly #service: Service;

  /** `disk` is undefined where all is handed over. */
  constructor(disk: SourceHost | undefined, makeService: ServiceMaker) {
    this.#files = new HandedOverFiles(disk);
    this.#service = makeService(this.#files);
  }

  /** What parts of the firmware show, then what it shows as a whole. Takes as long as the firmware does. Never throws. */
  *answer({ project, texts, listings, choices, cancel }: TrialRequest): Generator<TrialAnswer, void> {
    try {
      if (isCancelled(cancel)) return yield { kind: "cancelled" };
      this.#files.replace(texts, listings);
      const isThere = this.#service.projectsAt(project).some(({ id }) => id === project);
      if (!isThere) return yield { kind: "failed", why: "its files are not there any more" };
      this.#service.choose(project, choices);
      const isUnwanted = (): boolean => isCancelled(cancel);
      const parts = this.#service.tryOut(project, isUnwanted);
      if (parts === undefined) return yield { kind: "cancelled" };
      yield { kind: "tried", result: parts, isLast: false };
      const whole = this.#service.runWhole(project, isUnwanted);
      yield whole === undefined ? { kind: "cancelled" } : { kind: "tried", result: whole, isLast: true };
    } catch (error) {
      yield { kind: "failed", why: error instanceof Error ? error.message : String(error) };
    }
  }
}
