import { Worker } from "node:worker_threads";
import type { StarterOf } from "../worker.ts";

/**
 * Megabytes that a worker's heap may take. The sample workspace is checked in less than 48; what takes a thousand is
 * out of hand, and would take everybody else's memory next.
 */
const mostMemory = 1024;

export interface WorkerProgram {
  readonly program: URL;
  /** The `workerData` by which the program knows what it is to do. */
  readonly role: string;
  readonly megabytes?: number;
  /** Whether the process goes on for as long as the worker does. */
  readonly keepsProcess: boolean;
}

/** Starts workers of Node that run `program`, which answers each message with one of type `Answer`. */
export function workersOf<Request, Answer>({
  program,
  role,
  megabytes = mostMemory,
  keepsProcess,
}: WorkerProgram): StarterOf<Request, Answer> {
  return ({ answered, ended }) => {
    const worker = new Worker(program, {
      workerData: role,
      resourceLimits: { maxOldGenerationSizeMb: megabytes },
      // What it might print must not get between what this process writes.
      stdout: true,
      stderr: true,
    });
    worker.stdout.resume();
    worker.stderr.resume();
    if (!keepsProcess) worker.unref();
    let why: string | undefined;
    worker.on("message", (answer: Answer) => answered(answer));
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
        // Without a listener an error that is already on its way would be the process's own.
        worker.on("error", () => undefined);
        void worker.terminate();
      },
    };
  };
}

/** `ERR_WORKER_OUT_OF_MEMORY`: Node.js documentation, "Errors", Node.js error codes. */
function reasonOf(error: unknown, megabytes: number): string {
  if (!(error instanceof Error)) return String(error);
  const isMemory = "code" in error && error.code === "ERR_WORKER_OUT_OF_MEMORY";
  return isMemory ? `it needed more than ${megabytes} MB of memory` : error.message;
}
