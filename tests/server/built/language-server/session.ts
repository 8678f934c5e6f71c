import { type ChildProcess, spawn } from "node:child_process";
import { pathToFileURL } from "node:url";
import { createMessageConnection, StreamMessageReader, StreamMessageWriter } from "vscode-jsonrpc/node";
import { program } from "../program.ts";
import type { ScratchFolder } from "../scratch-folder.ts";
import { Conversation } from "./conversation.ts";

/** A conversation with a server of its own, over the server's standard input and output. */
export class Session extends Conversation {
  readonly folder: ScratchFolder;
  readonly process: ChildProcess;
  readonly #exited: Promise<number | null>;

  /** `root` is the URI of the folder that is open, where that is not the folder of the disk. */
  constructor(folder: ScratchFolder, root = pathToFileURL(folder.path).href) {
    const child = spawn(process.execPath, [program, "lsp", "--stdio"], {
      stdio: ["pipe", "pipe", "inherit"],
    });
    super(
      createMessageConnection(new StreamMessageReader(child.stdout), new StreamMessageWriter(child.stdin)),
      root,
    );
    this.folder = folder;
    this.process = child;
    this.#exited = new Promise((resolve) => child.on("exit", resolve));
  }

  /** Ends the conversation as an editor does; gives the server's exit code. */
  async end(): Promise<number | null> {
    await this.request("shutdown", undefined);
    await this.notify("exit", undefined);
    return this.#exited;
  }

  /** The server's exit code, once it has ended. */
  get exited(): Promise<number | null> {
    return this.#exited;
  }

  kill(): void {
    this.connection.dispose();
    if (this.process.exitCode === null) this.process.kill();
  }
}
