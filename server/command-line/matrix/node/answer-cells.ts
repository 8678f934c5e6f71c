import { parentPort } from "node:worker_threads";
import type { SourceHost } from "../../../../src-core/reader/source-host.ts";
import type { Service } from "../../../../src-core/service/service.ts";
import type { CellJob } from "../../../cells/cell-job.ts";
import { DiskFiles } from "../../../files/disk-files.ts";
import { CellAnswerer } from "../cell-answerer.ts";

/** Answers the thread that started this worker until it ends it. */
export function answerCells(makeService: (host: SourceHost) => Service): void {
  const answerer = new CellAnswerer(makeService(new DiskFiles("/")));
  parentPort?.on("message", (job: CellJob) => parentPort?.postMessage(answerer.answer(job)));
}
