import { Uri, workspace } from "vscode";
import type { WorkerStart } from "../../server/language-server/client-messages/web-worker.ts";

/** The server in a web worker. */
export class WebServer {
  readonly #extension: Uri;
  #worker: Worker | undefined;
  #program: string | undefined;

  constructor(extension: Uri) {
    this.#extension = extension;
  }

  /**
   * Gives what LSP is spoken over; rejects where the worker cannot be started. `failed` hears of what goes wrong later, outside
   * of any request. The worker fetches nothing: wherever the extension lies, the editor reads its files.
   */
  async start(failed: (why: string) => void): Promise<MessagePort> {
    const [source, runtimeWasm, grammarWasm] = await Promise.all(
      ["web/server.js", "web-tree-sitter.wasm", "tree-sitter-cpp.wasm"].map((name) =>
        workspace.fs.readFile(Uri.joinPath(this.#extension, "dist", name)),
      ),
    );
    if (source === undefined || runtimeWasm === undefined || grammarWasm === undefined) {
      throw new Error("the extension's own files could not be read");
    }
    this.end();
    const program = URL.createObjectURL(new Blob([new Uint8Array(source)], { type: "text/javascript" }));
    const worker = new Worker(program, { name: "edgewise server" });
    const { port1, port2 } = new MessageChannel();
    const extension = `${this.#extension.toString().replace(/\/$/, "")}/`;
    const start: WorkerStart = { role: "server", port: port2, program, runtimeWasm, grammarWasm, extension };
    this.#worker = worker;
    this.#program = program;
    await new Promise<void>((resolve, reject) => {
      worker.onmessage = () => resolve();
      worker.onerror = ({ message }) => reject(new Error(message || "its worker could not be started"));
      worker.postMessage(start, [port2]);
    });
    worker.onerror = ({ message }) => failed(message);
    return port1;
  }

  /** Ends the worker, and with it those that it started. */
  end(): void {
    this.#worker?.terminate();
    if (this.#program !== undefined) URL.revokeObjectURL(this.#program);
    this.#worker = undefined;
    this.#program = undefined;
  }
}
