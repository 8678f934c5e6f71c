import { expect, test } from "vitest";
import { type WebWorker, webWorkersOf } from "../../../../server/workers/web/start-worker.ts";

type Event = Parameters<Parameters<WebWorker["addEventListener"]>[1]>[0];

/** A worker that does as the test says. */
class Scripted implements WebWorker {
  readonly posted: unknown[] = [];
  isTerminated = false;
  readonly #listeners = new Map<string, (event: Event) => void>();

  postMessage(message: unknown): void {
    this.posted.push(message);
  }

  terminate(): void {
    this.isTerminated = true;
  }

  addEventListener(kind: string, listener: (event: Event) => void): void {
    this.#listeners.set(kind, listener);
  }

  tell(kind: string, event: Partial<Event> = {}): void {
    this.#listeners.get(kind)?.({ preventDefault: () => undefined, ...event });
  }
}

function started() {
  const scripted = new Scripted();
  const heard: string[] = [];
  const worker = webWorkersOf<string, string>(() => scripted, { role: "runs" })({
    answered: (answer) => heard.push(answer),
    ended: (why) => heard.push(`ended: ${why}`),
  });
  return { scripted, heard, worker };
}

test("it is told what it is to do, then asked, and its answers are handed on", () => {
  const { scripted, heard, worker } = started();
  worker.post("one");
  scripted.tell("message", { data: "answer to one" });
  expect(scripted.posted).toEqual([{ role: "runs" }, "one"]);
  expect(heard).toEqual(["answer to one"]);
});

test.each([
  ["error", { message: "out of memory" }, "ended: out of memory"],
  ["error", {}, "ended: its worker could not be started"],
  ["messageerror", {}, "ended: its answer could not be read"],
])("one that fails is ended, and that is told once: %s %o", (kind, event, told) => {
  const { scripted, heard } = started();
  scripted.tell(kind, event);
  scripted.tell(kind, event);
  scripted.tell("message", { data: "late" });
  expect(heard).toEqual([told]);
  expect(scripted.isTerminated).toBe(true);
});

test("one that was ended tells nothing any more", () => {
  const { scripted, heard, worker } = started();
  worker.end();
  scripted.tell("message", { data: "late" });
  scripted.tell("error", { message: "late" });
  expect(scripted.isTerminated).toBe(true);
  expect(heard).toEqual([]);
});
