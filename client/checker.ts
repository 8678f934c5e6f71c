import {
  type CancellationToken,
  type ExtensionContext,
  type LogOutputChannel,
  window,
  workspace,
} from "vscode";
import { LanguageClient, TransportKind } from "vscode-languageclient/node";
import {
  type MatrixCellParams,
  matrixCellNotification,
} from "../server/language-server/client-messages/matrix.ts";
import { type CheckStatus, statusNotification } from "../server/language-server/client-messages/status.ts";
import type { StatusItem } from "./status-item.ts";

/** The language server's life: started, stopped and restarted as the settings say. */
export class Checker {
  readonly log: LogOutputChannel;
  readonly #serverFile: string;
  readonly #status: StatusItem;
  /** Called for each cell of a matrix that was run. */
  onMatrixCell: (cell: MatrixCellParams) => void = () => undefined;
  #client: LanguageClient | undefined;

  constructor(context: ExtensionContext, status: StatusItem) {
    this.#serverFile = context.asAbsolutePath("dist/edgewise.js");
    this.#status = status;
    this.log = window.createOutputChannel("Edgewise", { log: true });
    context.subscriptions.push(this.log);
  }

  /** Starts or stops the server as `edgewise.enable` says. */
  async followSetting(): Promise<void> {
    if (workspace.getConfiguration("edgewise").get<boolean>("enable", true)) await this.start();
    else await this.stop();
  }

  async restart(): Promise<void> {
    await this.stop();
    await this.followSetting();
  }

  /** Asks the server; undefined, and said to the user, where it does not run. */
  async request<Answer>(
    method: string,
    params: object,
    cancelled?: CancellationToken,
  ): Promise<Answer | undefined> {
    if (this.#client === undefined) {
      void window.showWarningMessage("The checker does not run; `edgewise.enable` starts it.");
      return undefined;
    }
    // A token that is there but undefined would be sent as a second parameter.
    return cancelled === undefined
      ? this.#client.sendRequest<Answer>(method, params)
      : this.#client.sendRequest<Answer>(method, params, cancelled);
  }

  /** Tells the server, where it runs. */
  async notify(method: string, params: object): Promise<void> {
    await this.#client?.sendNotification(method, params);
  }

  async start(): Promise<void> {
    if (this.#client !== undefined) return;
    const client = this.#createClient();
    this.#client = client;
    client.onNotification(statusNotification, (status: CheckStatus) => this.#status.show(status));
    client.onNotification(matrixCellNotification, (cell: MatrixCellParams) => this.onMatrixCell(cell));
    try {
      await client.start();
    } catch (error) {
      this.#client = undefined;
      this.log.error(`The checker did not start: ${String(error)}`);
      this.#status.show({ state: "stopped" });
    }
  }

  async stop(): Promise<void> {
    const client = this.#client;
    this.#client = undefined;
    this.#status.show({ state: "stopped" });
    await client?.dispose();
  }

  #createClient(): LanguageClient {
    return new LanguageClient(
      "edgewise",
      "Edgewise",
      { module: this.#serverFile, args: ["lsp"], transport: TransportKind.stdio },
      {
        documentSelector: [
          { scheme: "file", language: "c" },
          { scheme: "file", language: "cpp" },
          { scheme: "file", pattern: "**/*.ino" },
          { scheme: "file", pattern: "**/edgewise.json" },
        ],
        initializationOptions: { status: true, lensCommands: true },
        synchronize: { configurationSection: "edgewise" },
        outputChannel: this.log,
      },
    );
  }
}
