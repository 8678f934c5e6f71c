/**
 * The first message to a web worker that runs the server's bundle: what it is to do, and what it cannot fetch by itself.
 * A worker of role `server` speaks LSP over `port`; the others, which it starts itself, answer each further message.
 */
export type WorkerStart = WorkerFiles &
  (
    | {
        readonly role: "server";
        /** A `MessagePort`. */
        readonly port: unknown;
        /** URI of the extension's folder, with a slash at its end. */
        readonly extension: string;
      }
    | { readonly role: "trials" | "runs" }
  );

/** The one message of a worker of role `server`: it listens to its port now. */
export const serverReady = "ready";

export interface WorkerFiles {
  /** URL of the bundle, from which further workers are started. */
  readonly program: string;
  /** Bytes of `web-tree-sitter.wasm`. */
  readonly runtimeWasm: Uint8Array;
  /** Bytes of `tree-sitter-cpp.wasm`. */
  readonly grammarWasm: Uint8Array;
}
