import type { StarterOf } from "../worker.ts";

/** As much of a browser's `Worker` as is needed. */
export interface WebWorker {
  postMessage(message: unknown): void;
  terminate(): void;
  addEventListener(
    kind: "message" | "messageerror" | "error",
    listener: (event: { readonly data?: unknown; readonly message?: string; preventDefault(): void }) => void,
  ): void;
}

/** Starts web workers that are told `first` what they are to do, and answer each later message with those of type `Answer`. */
export function webWorkersOf<Request, Answer>(
  make: () => WebWorker,
  first: object,
): StarterOf<Request, Answer> {
  return ({ answered, ended }) => {
    const worker = make();
    let isOver = false;
    const end = (): void => {
      isOver = true;
      worker.terminate();
    };
    const fail = (why: string): void => {
      if (isOver) return;
      end();
      ended(why);
    };
    worker.addEventListener("message", ({ data }) => {
      // One that was on its way already.
      if (!isOver) answered(data as Answer);
    });
    worker.addEventListener("messageerror", () => fail("its answer could not be read"));
    worker.addEventListener("error", (event) => {
      // Else the fault would be the server's own.
      event.preventDefault();
      fail(event.message || "its worker could not be started");
    });
    worker.postMessage(first);
    return { post: (request) => worker.postMessage(request), end };
  };
}
