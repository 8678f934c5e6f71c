import { parentPort } from "node:worker_threads";
import { DiskFiles } from "../../../files/disk-files.ts";
import type { ServiceMaker } from "../../serve.ts";
import type { TrialRequest } from "../messages.ts";
import { TrialAnswerer } from "../trial-answerer.ts";

/** Answers the thread that started this worker until it ends it. */
export function answerInWorker(makeService: ServiceMaker): void {
  const answerer = new TrialAnswerer(new DiskFiles("/"), makeService);
  parentPort?.on("message", (request: TrialRequest) => {
    for (const answer of answerer.answer(request)) parentPort?.postMessage(answer);
  });
}
