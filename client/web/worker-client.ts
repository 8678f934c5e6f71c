import type { Uri } from "vscode";
import {
  BrowserMessageReader,
  BrowserMessageWriter,
  LanguageClient,
  type LanguageClientOptions,
} from "vscode-languageclient/browser";
import { WebServer } from "./web-server.ts";

/** A client whose server is a web worker, which ends with it. */
export class WorkerClient extends LanguageClient {
  readonly #server: WebServer;

  constructor(extension: Uri, options: LanguageClientOptions) {
    const server = new WebServer(extension);
    super(
      "edgewise",
      "Edgewise",
      async () => {
        const port = await server.start((why) => {
          this.error(`The checker's worker failed: ${why}`);
          reader.close();
        });
        const reader = new ClosingReader(port);
        return { reader, writer: new BrowserMessageWriter(port) };
      },
      options,
    );
    this.#server = server;
  }

  override async stop(timeout?: number): Promise<void> {
    try {
      await super.stop(timeout);
    } finally {
      this.#server.end();
    }
  }
}

/** A port does not tell that nobody is at its other end any more. */
class ClosingReader extends BrowserMessageReader {
  close(): void {
    this.fireClose();
  }
}
