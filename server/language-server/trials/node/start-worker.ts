import { Worker } from "node:worker_threads";
import type { TrialAnswer } from "../messages.ts";
import type { StartWorker, TrialWorker, WorkerEvents } from "../trial-worker.ts";
import { trialRole } from "./trial-role.ts";

/**
 * Megabytes that the worker's heap may take. The sample workspace is checked in less than 48; what takes a thousand is
 * out of hand, and would take the editor's memory next.
 */
const mostMemory = 1024;

/** Starts workers of Node that run `program`, which has to look for `trialRole`. */
export function workersRunning(program: URL, megabytes: number = mostMemory): StartWorker {
  return (events) => startWorker(program, megabytes, events);
}

function startWorker(program: URL, megabytes: number, { answered, ended }: WorkerEvents): TrialWorker {
  const worker = new Worker(program, {
    workerData: trialRole,
    resourceLimits: { maxOldGenerationSizeMb: megabytes },
    // What it might print must not get between the messages of the protocol.
    stdout: true,
    stderr: true,
  });
  worker.stdout.resume();
  worker.stderr.resume();
  // The server may end without asking whether a trial is still on.
  worker.unref();
  let why: string | undefined;
  worker.on("message", (answer: TrialAnswer) => answered(answer));
  worker.on("messageerror", (error) => {
    why = error.message;
    void worker.terminate();
  });
  worker.on("error", (error: unknown) => {
    why = reasonOf(error, megabytes);
  });
  worker.on("exit", (code) => ended(why ?? `the thread that runs it ended with code ${code}`));
  return {
    post: (request) => worker.postMessage(request),
    end() {
      worker.removeAllListeners();
      // Without a listener an error that is already on its way would be the server's own.
      worker.on("error", () => undefined);
      void worker.terminate();
    },
  };
}

/** `ERR_WORKER_OUT_OF_MEMORY`: Node.js documentation, "Errors", Node.js error codes. */
function reasonOf(error: unknown, megabytes: number): string {
  if (!(error instanceof Error)) return String(error);
  const isMemory = "code" in error && error.code === "ERR_WORKER_OUT_OF_MEMORY";
  return isMemory ? `it needed more than ${megabytes} MB of memory` : error.message;
}
