import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { runInThisContext } from "node:vm";
import { parentPort, Worker as Thread, workerData } from "node:worker_threads";

/**
 * A thread of Node that looks to a classic script like a web worker: it has no `require` and no `process`, and shared memory in a page
 * that is isolated alone. Web APIs that Node has too are Node's.
 */
const standIn = new URL(import.meta.url);
const { program, cores, isIsolated } = workerData;

class Worker extends EventTarget {
  #thread;

  constructor(url) {
    super();
    this.#thread = new Thread(standIn, { workerData: { program: String(url), cores, isIsolated } });
    this.#thread.on("message", (data) => this.dispatchEvent(new MessageEvent("message", { data })));
    this.#thread.on("error", ({ message }) =>
      this.dispatchEvent(Object.assign(new Event("error"), { message })),
    );
  }

  postMessage(message, transferred) {
    this.#thread.postMessage(message, transferred);
  }

  terminate() {
    void this.#thread.terminate();
  }
}

const source = readFileSync(fileURLToPath(program), "utf8");
const self = globalThis;
Object.assign(self, {
  self,
  Worker,
  WorkerGlobalScope: class {},
  postMessage: (message) => parentPort.postMessage(message),
  onmessage: null,
});
Object.defineProperty(self, "navigator", { value: { hardwareConcurrency: cores } });
for (const name of ["process", "Buffer", "global", "setImmediate", "clearImmediate"]) delete self[name];
if (!isIsolated) delete self.SharedArrayBuffer;
runInThisContext(source, { filename: program });
parentPort.on("message", (data) => self.onmessage?.({ data }));
