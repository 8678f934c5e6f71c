import type { CancellationToken, MessageConnection } from "vscode-jsonrpc/node";
import type {
  CodeAction,
  CompletionItem,
  Diagnostic,
  Hover,
  InitializeResult,
  Position,
  PublishDiagnosticsParams,
  Range,
} from "vscode-languageserver/node";
import type {
  CellVerdict,
  MatrixCellParams,
} from "../../../../server/language-server/client-messages/matrix.ts";

/** One editor's conversation with a server that is reached over a connection. */
export class Conversation {
  /** What the server said of its work, in order. */
  readonly statuses: unknown[] = [];
  /** All diagnostics that were published, in order. */
  readonly published: PublishDiagnosticsParams[] = [];
  /** What the server wrote to the log. */
  readonly log: string[] = [];
  readonly connection: MessageConnection;
  readonly #root: string;
  readonly #diagnostics = new Map<string, readonly Diagnostic[]>();
  /** Called for each cell of a matrix that was run. */
  onCell: (matrix: number, cell: CellVerdict) => void = () => undefined;
  #refresh: () => void = () => undefined;
  #heard: () => void = () => undefined;

  /** `root` is the URI of the folder that is open, without a slash at its end. */
  constructor(connection: MessageConnection, root: string) {
    this.connection = connection;
    this.#root = root;
    this.connection.onNotification(
      "textDocument/publishDiagnostics",
      (published: PublishDiagnosticsParams) => {
        this.published.push(published);
        this.#diagnostics.set(published.uri, published.diagnostics);
        this.#heard();
      },
    );
    this.connection.onNotification("edgewise/status", (status: unknown) => {
      this.statuses.push(status);
      this.#heard();
    });
    this.connection.onNotification("edgewise/matrixCell", ({ matrix, cell }: MatrixCellParams) =>
      this.onCell(matrix, cell),
    );
    // Requests of the server that an editor would answer.
    this.connection.onRequest("client/registerCapability", () => null);
    this.connection.onRequest("workspace/codeLens/refresh", () => {
      this.#refresh();
      return null;
    });
    connection.onNotification("window/logMessage", ({ message }: { message: string }) => {
      this.log.push(message);
    });
    connection.listen();
  }

  async start(initializationOptions: object = {}): Promise<InitializeResult> {
    const result = await this.request<InitializeResult>("initialize", {
      processId: process.pid,
      rootUri: this.#root,
      workspaceFolders: [{ uri: this.#root, name: "test" }],
      initializationOptions,
      capabilities: {
        textDocument: { publishDiagnostics: { codeDescriptionSupport: true } },
        workspace: {
          codeLens: { refreshSupport: true },
          didChangeWatchedFiles: { dynamicRegistration: true },
          workspaceFolders: true,
        },
      },
    });
    await this.notify("initialized", {});
    await this.notify("workspace/didChangeConfiguration", { settings: { edgewise: { checkDelay: 0 } } });
    return result;
  }

  uri(name: string): string {
    return `${this.#root.replace(/\/$/, "")}/${name}`;
  }

  request<T>(method: string, parameters: unknown, token?: CancellationToken): Promise<T> {
    // A token that is there but undefined would pass for a second parameter.
    return token === undefined
      ? this.connection.sendRequest(method, parameters)
      : this.connection.sendRequest(method, parameters, token);
  }

  notify(method: string, parameters: unknown): Promise<void> {
    return this.connection.sendNotification(method, parameters);
  }

  open(name: string, text: string, languageId = "c"): Promise<void> {
    const textDocument = { uri: this.uri(name), languageId, version: 1, text };
    return this.notify("textDocument/didOpen", { textDocument });
  }

  change(name: string, version: number, text: string, range?: Range): Promise<void> {
    const contentChanges = [range === undefined ? { text } : { text, range }];
    return this.notify("textDocument/didChange", {
      textDocument: { uri: this.uri(name), version },
      contentChanges,
    });
  }

  hover(name: string, position: Position, token?: CancellationToken): Promise<Hover | null> {
    return this.request("textDocument/hover", { textDocument: { uri: this.uri(name) }, position }, token);
  }

  completion(name: string, position: Position): Promise<readonly CompletionItem[]> {
    return this.request("textDocument/completion", { textDocument: { uri: this.uri(name) }, position });
  }

  codeActions(
    name: string,
    range: Range,
    diagnostics: readonly Diagnostic[],
  ): Promise<readonly CodeAction[]> {
    const context = { diagnostics };
    return this.request("textDocument/codeAction", { textDocument: { uri: this.uri(name) }, range, context });
  }

  /** Resolves once the file's diagnostics are as wanted; the test's own time limit bounds the wait. */
  async diagnostics(
    name: string,
    wanted: (diagnostics: readonly Diagnostic[]) => boolean,
  ): Promise<readonly Diagnostic[]> {
    for (;;) {
      const now = this.#diagnostics.get(this.uri(name));
      if (now !== undefined && wanted(now)) return now;
      await new Promise<void>((resolve) => {
        this.#heard = resolve;
      });
    }
  }

  /** Resolves once the server asks to have lenses asked for again. */
  refreshed(): Promise<void> {
    return new Promise((resolve) => {
      this.#refresh = resolve;
    });
  }

  /** Resolves once the server has said something of its work that is as wanted. */
  async status(wanted: (status: unknown) => boolean): Promise<void> {
    while (!this.statuses.some(wanted)) {
      await new Promise<void>((resolve) => {
        this.#heard = resolve;
      });
    }
  }
}
