import {
  type CancellationToken,
  type ExtensionContext,
  type LogOutputChannel,
  window,
  workspace,
} from "vscode";
import type { LanguageClient } from "vscode-languageclient/node";
import {
  type MatrixCellParams,
  matrixCellNotification,
} from "../server/language-server/client-messages/matrix.ts";
import { type CheckStatus, statusNotification } from "../server/language-server/client-messages/status.ts";
import { isLost, newClient } from "./language-client.ts";
import { ServerEnds } from "./server-ends.ts";
import type { StatusItem } from "./status-item.ts";

/** The language server's life: started, stopped and restarted as the settings say, and when it ended by itself. */
export class Checker {
  readonly log: LogOutputChannel;
  readonly #serverFile: string;
  readonly #status: StatusItem;
  readonly #ends = new ServerEnds();
  /** Called for each cell of a matrix that was run. */
  onMatrixCell: (cell: MatrixCellParams) => void = () => undefined;
  #client: LanguageClient | undefined;
  /** Resolves when the client is up, or will not be. */
  #started: Promise<void> = Promise.resolve();
  #session = 0;

  constructor(context: ExtensionContext, status: StatusItem) {
    this.#serverFile = context.asAbsolutePath("dist/edgewise.js");
    this.#status = status;
    this.log = window.createOutputChannel("Edgewise", { log: true });
    context.subscriptions.push(this.log);
  }

  /** Another number for each server that was started; what one holds, the next does not know. */
  get session(): number {
    return this.#session;
  }

  /** Starts or stops the server as `edgewise.enable` says. */
  async followSetting(): Promise<void> {
    if (workspace.getConfiguration("edgewise").get<boolean>("enable", true)) await this.#start();
    else await this.stop();
  }

  async restart(): Promise<void> {
    this.#ends.forget();
    await this.stop();
    await this.followSetting();
  }

  /** Asks the server; undefined, and said to the user, where it does not run or ended over it; undefined when cancelled. */
  async request<Answer>(
    method: string,
    params: object,
    cancelled?: CancellationToken,
  ): Promise<Answer | undefined> {
    if (this.#client === undefined) {
      void window.showWarningMessage(
        this.#ends.count > 0
          ? "The checker does not run; `Edgewise: Restart the Checker` starts it."
          : "The checker does not run; `edgewise.enable` starts it.",
      );
      return undefined;
    }
    const { session } = this;
    const answer = await this.ask<Answer>(method, params, cancelled);
    if (answer === undefined && session !== this.#session && cancelled?.isCancellationRequested !== true)
      void window.showWarningMessage("The checker ended before it could answer. Ask once more.");
    return answer;
  }

  /** The same without a word. */
  async ask<Answer>(
    method: string,
    params: object,
    cancelled?: CancellationToken,
  ): Promise<Answer | undefined> {
    const client = this.#client;
    if (client === undefined) return undefined;
    try {
      // A token that is there but undefined would be sent as a second parameter.
      return cancelled === undefined
        ? await client.sendRequest<Answer>(method, params)
        : await client.sendRequest<Answer>(method, params, cancelled);
    } catch (error) {
      if (cancelled?.isCancellationRequested === true) return undefined;
      if (!isLost(error)) throw error;
      this.#ended(client);
      return undefined;
    }
  }

  /** Tells the server, where it runs. */
  async notify(method: string, params: object): Promise<void> {
    await this.#client?.sendNotification(method, params).catch(() => undefined);
  }

  async stop(): Promise<void> {
    const client = this.#client;
    this.#client = undefined;
    this.#status.show({ state: "off" });
    // What is being started cannot be stopped.
    await this.#started;
    await client
      ?.dispose()
      .catch((error: unknown) => this.log.warn(`Stopping the checker: ${String(error)}`));
  }

  async #start(): Promise<void> {
    if (this.#client !== undefined) return;
    this.#session += 1;
    const client = newClient(this.#serverFile, this.log, () => this.#ended(client));
    this.#client = client;
    client.onNotification(statusNotification, (status: CheckStatus) => {
      if (this.#client === client) this.#status.show(status);
    });
    client.onNotification(matrixCellNotification, (cell: MatrixCellParams) => this.onMatrixCell(cell));
    this.#started = client.start().catch(() => this.#ended(client));
    await this.#started;
  }

  /** Heard of in several ways: the connection closed, the start failed, a request found nobody. */
  #ended(client: LanguageClient): void {
    if (this.#client !== client) return;
    this.#client = undefined;
    void client.dispose().catch(() => undefined);
    if (this.#ends.happened(Date.now())) {
      this.log.warn("The checker ended unexpectedly and is started again.");
      this.#status.restarted();
      void this.#start();
    } else void this.#giveUp();
  }

  async #giveUp(): Promise<void> {
    const said = `The checker ended unexpectedly ${this.#ends.count} times within 3 minutes and is not started again.`;
    this.log.error(said);
    this.#status.show({ state: "gave-up" });
    const [restart, show] = ["Restart the Checker", "Show Log"];
    const answer = await window.showErrorMessage(said, restart, show);
    if (answer === restart) await this.restart();
    else if (answer === show) this.log.show();
  }
}
