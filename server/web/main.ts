import { version } from "../../package.json";
import { createService } from "../../src-core/service/create-service.ts";
import { createGrammar } from "../../src-core/service/grammar.ts";
import {
  serverReady,
  type WorkerFiles,
  type WorkerStart,
} from "../language-server/client-messages/web-worker.ts";
import type { RunRequest } from "../language-server/runs/messages.ts";
import { RunAnswerer } from "../language-server/runs/run-answerer.ts";
import type { ServiceMaker } from "../language-server/serve.ts";
import type { TrialRequest } from "../language-server/trials/messages.ts";
import { TrialAnswerer } from "../language-server/trials/trial-answerer.ts";
import { serveOverPort } from "./serve-over-port.ts";

/** The program of all web workers: the language server, and the workers that it starts from the same file. */

declare const self: DedicatedWorkerGlobalScope;

/** Settled by the first message; the others wait for it. */
let listener: Promise<(request: unknown) => void> | undefined;

self.onmessage = async ({ data }: MessageEvent) => {
  if (listener === undefined) {
    listener = started(data as WorkerStart);
    // A worker's parent hears of what is thrown, and of no rejection.
    listener.catch((error: unknown) =>
      setTimeout(() => {
        throw error;
      }, 0),
    );
  } else {
    (await listener)(data);
  }
};

async function started(start: WorkerStart): Promise<(request: unknown) => void> {
  const makeService = await serviceMaker(start);
  switch (start.role) {
    case "trials": {
      const answerer = new TrialAnswerer(undefined, makeService);
      return (request) => {
        for (const answer of answerer.answer(request as TrialRequest)) self.postMessage(answer);
      };
    }
    case "runs": {
      const answerer = new RunAnswerer(undefined, makeService);
      return (request) => self.postMessage(answerer.answer(request as RunRequest));
    }
    case "server":
      serveOverPort(start.port as MessagePort, start, { version, makeService });
      self.postMessage(serverReady);
      return () => undefined;
  }
}

async function serviceMaker(files: WorkerFiles): Promise<ServiceMaker> {
  const grammar = await createGrammar(files);
  return (host) => createService({ host, grammar, startName: "" });
}
