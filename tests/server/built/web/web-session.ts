import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { MessageChannel, type MessagePort, Worker } from "node:worker_threads";
import { afterEach } from "vitest";
import {
  AbstractMessageReader,
  AbstractMessageWriter,
  createMessageConnection,
  type DataCallback,
  type Disposable,
  type Message,
} from "vscode-jsonrpc/node";
import type { WorkerStart } from "../../../../server/language-server/client-messages/web-worker.ts";
import { Conversation } from "../language-server/conversation.ts";
import { MemoryFiles } from "../language-server/memory-files.ts";

const program = pathToFileURL(resolve("dist/web/server.js")).href;
const workers: Worker[] = [];

afterEach(async () => {
  for (const worker of workers.splice(0)) await worker.terminate();
});

/** A conversation with the bundle for web workers, in a stand-in of one, which ends with the test. */
export async function webSessionOver(
  files: Readonly<Record<string, string>>,
  { root = "memory://harbour/firmware", isIsolated = false } = {},
): Promise<{ readonly session: Conversation; readonly memory: MemoryFiles; readonly faults: unknown[] }> {
  const faults: unknown[] = [];
  const worker = new Worker(new URL("stand-in-program.mjs", import.meta.url), {
    workerData: { program, cores: 2, isIsolated },
  });
  worker.on("error", (fault) => faults.push(fault));
  workers.push(worker);
  const { port1, port2 } = new MessageChannel();
  const start: WorkerStart = {
    role: "server",
    program,
    port: port2,
    runtimeWasm: new Uint8Array(readFileSync("dist/web-tree-sitter.wasm")),
    grammarWasm: new Uint8Array(readFileSync("dist/tree-sitter-cpp.wasm")),
    extension: "https://extensions.test/edgewise/",
  };
  await new Promise((resolve, reject) => {
    worker.once("message", resolve);
    worker.once("error", reject);
    worker.postMessage(start, [port2]);
  });
  const session = new Conversation(
    createMessageConnection(new PortReader(port1), new PortWriter(port1)),
    root,
  );
  const memory = new MemoryFiles(root, files);
  memory.answerRequestsOf(session.connection);
  await session.start({ status: true, files: true, lensCommands: true });
  return { session, memory, faults };
}

class PortReader extends AbstractMessageReader {
  readonly #port: MessagePort;

  constructor(port: MessagePort) {
    super();
    this.#port = port;
  }

  listen(callback: DataCallback): Disposable {
    this.#port.on("message", callback);
    return { dispose: () => void this.#port.off("message", callback) };
  }
}

class PortWriter extends AbstractMessageWriter {
  readonly #port: MessagePort;

  constructor(port: MessagePort) {
    super();
    this.#port = port;
  }

  async write(message: Message): Promise<void> {
    this.#port.postMessage(message);
  }

  end(): void {
    this.#port.close();
  }
}
