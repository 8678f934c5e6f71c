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
   * Gives what LSP is spoken over. The worker fetches nothing: wherever the extension lies, the editor reads its files.
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
    worker.onerror = ({ message }) => failed(message);
    const { port1, port2 } = new MessageChannel();
    const extension = `${this.#extension.toString().replace(/\/$/, "")}/`;
    const start: WorkerStart = { role: "server", port: port2, program, runtimeWasm, grammarWasm, extension };
    worker.postMessage(start, [port2]);
    this.#worker = worker;
    this.#program = program;
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
