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

  constructor(disk: SourceHost, makeService: ServiceMaker) {
    this.#files = new HandedOverFiles(disk);
    this.#service = makeService(this.#files);
  }

  /** Takes as long as the firmware does. Never throws. */
  answer({ project, texts, cancel }: TrialRequest): TrialAnswer {
    if (isCancelled(cancel)) return { kind: "cancelled" };
    try {
      this.#files.replace(texts);
      const isThere = this.#service.projectsAt(project).some(({ id }) => id === project);
      if (!isThere) return { kind: "failed", why: "its files are not on the disk any more" };
      const result = this.#service.tryOut(project, () => isCancelled(cancel));
      return result === undefined ? { kind: "cancelled" } : { kind: "tried", result };
    } catch (error) {
      return { kind: "failed", why: error instanceof Error ? error.message : String(error) };
    }
  }
}
