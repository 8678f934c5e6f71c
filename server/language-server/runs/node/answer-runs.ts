import { parentPort } from "node:worker_threads";
import { DiskFiles } from "../../../files/disk-files.ts";
import type { ServiceMaker } from "../../serve.ts";
import type { RunRequest } from "../messages.ts";
import { RunAnswerer } from "../run-answerer.ts";

/** Answers the thread that started this worker until it ends it. */
export function answerRuns(makeService: ServiceMaker): void {
  const answerer = new RunAnswerer(new DiskFiles("/"), makeService);
  parentPort?.on("message", (request: RunRequest) => parentPort?.postMessage(answerer.answer(request)));
}
