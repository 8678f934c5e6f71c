import {
  type CancellationToken,
  EventEmitter,
  type ExtensionContext,
  type LogOutputChannel,
  window,
  workspace,
} from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import {
  type MatrixCellParams,
  matrixCellNotification,
} from "../server/language-server/client-messages/matrix.ts";
import { type CheckStatus, statusNotification } from "../server/language-server/client-messages/status.ts";
import type { LoadLibrary } from "./client-library.ts";
import { fileSchemes } from "./file-schemes.ts";
import { handOverFiles } from "./hand-over/hand-over-files.ts";
import { ToldOnce } from "./hand-over/told-once.ts";
import { noCheckerInWords } from "./no-checker.ts";
import { ServerEnds } from "./server-ends.ts";
import type { StatusItem } from "./status-item.ts";

/** What was found, once all is checked. */
export type Checked = Extract<CheckStatus, { state: "ready" }>;

/** One server, from when it is wanted. */
interface Running {
  /** Of the documents that it hears of. */
  readonly schemes: readonly string[];
  readonly client: Promise<BaseLanguageClient>;
  /** Resolves when the server is up, or will not be. */
  started: Promise<void>;
}

/** The language server's life: started, stopped and restarted as the settings say, and when it ended by itself. */
export class Checker {
  readonly log: LogOutputChannel;
  readonly #context: ExtensionContext;
  readonly #library: LoadLibrary;
  readonly #status: StatusItem;
  readonly #ends = new ServerEnds();
  readonly #told = new ToldOnce();
  /** Called for each cell of a matrix that was run. */
  onMatrixCell: (cell: MatrixCellParams) => void = () => undefined;
  readonly #checked = new EventEmitter<Checked>();
  /** All firmwares are checked as they are now. */
  readonly onChecked = this.#checked.event;
  #running: Running | undefined;
  #session = 0;
  #gaveUp = false;

  constructor(context: ExtensionContext, status: StatusItem, library: LoadLibrary) {
    this.#context = context;
    this.#library = library;
    this.#status = status;
    this.log = window.createOutputChannel("Edgewise", { log: true });
    context.subscriptions.push(this.log, this.#checked);
  }

  /** Another number for each server that was started; what one holds, the next does not know. */
  get session(): number {
    return this.#session;
  }

  /** Starts or stops the server as `edgewise.enable` says. */
  async followSetting(): Promise<void> {
    if (isEnabled()) await this.#start().started;
    else await this.stop();
  }

  /** A folder of another kind may have been opened; which documents a server hears of is settled at its start. */
  async followFolders(): Promise<void> {
    const schemes = this.#running?.schemes;
    if (schemes !== undefined && fileSchemes().some((scheme) => !schemes.includes(scheme))) {
      await this.restart();
    }
  }

  async restart(): Promise<void> {
    this.#ends.forget();
    if (isEnabled()) this.#status.startsAnew();
    await this.#end();
    await this.followSetting();
  }

  /** Asks the server; undefined, and said to the user, where it does not run or ended over it; undefined when cancelled. */
  async request<Answer>(
    method: string,
    params: object,
    cancelled?: CancellationToken,
  ): Promise<Answer | undefined> {
    if (this.#running === undefined) {
      void window.showWarningMessage(noCheckerInWords(isEnabled(), this.#gaveUp));
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
    const running = this.#running;
    if (running === undefined) return undefined;
    try {
      const client = await running.client;
      // A token that is there but undefined would be sent as a second parameter.
      return cancelled === undefined
        ? await client.sendRequest<Answer>(method, params)
        : await client.sendRequest<Answer>(method, params, cancelled);
    } catch (error) {
      if (cancelled?.isCancellationRequested === true) return undefined;
      if (!(await this.#library()).isLost(error)) throw error;
      this.#ended(running);
      return undefined;
    }
  }

  /** Tells the server, where it runs. */
  async notify(method: string, params: object): Promise<void> {
    const client = await this.#running?.client;
    await client?.sendNotification(method, params).catch(() => undefined);
  }

  async stop(): Promise<void> {
    this.#status.show({ state: "off" });
    await this.#end();
  }

  async #end(): Promise<void> {
    const running = this.#running;
    this.#running = undefined;
    if (running === undefined) return;
    // What is being started cannot be stopped.
    await running.started;
    await this.#dispose(running);
  }

  #start(): Running {
    if (this.#running !== undefined) return this.#running;
    this.#session += 1;
    this.#gaveUp = false;
    const schemes = fileSchemes();
    const running: Running = {
      schemes,
      client: this.#newClient(schemes, () => this.#ended(running)),
      started: Promise.resolve(),
    };
    this.#running = running;
    running.started = this.#startOf(running).catch((error: unknown) => {
      this.log.error(`The checker did not start: ${String(error)}`);
      this.#ended(running);
    });
    return running;
  }

  async #newClient(schemes: readonly string[], ended: () => void): Promise<BaseLanguageClient> {
    // Loading it takes longer than all else of the start, which the editor is to see the end of first.
    await new Promise<void>((resolve) => setTimeout(resolve));
    return (await this.#library()).makeClient(this.#context, { schemes, log: this.log, ended });
  }

  async #startOf(running: Running): Promise<void> {
    const client = await running.client;
    handOverFiles(client, this.#told);
    client.onNotification(statusNotification, (status: CheckStatus) => {
      if (this.#running !== running) return;
      this.#status.show(status);
      if (status.state === "ready") this.#checked.fire(status);
    });
    client.onNotification(matrixCellNotification, (cell: MatrixCellParams) => this.onMatrixCell(cell));
    await client.start();
  }

  /** Heard of in several ways: the connection closed, the start failed, a request found nobody. */
  #ended(running: Running): void {
    if (this.#running !== running) return;
    this.#running = undefined;
    void this.#dispose(running);
    if (this.#ends.happened(Date.now())) {
      this.log.warn("The checker ended unexpectedly and is started again.");
      this.#status.restarted();
      this.#start();
    } else void this.#giveUp();
  }

  async #dispose({ client }: Running): Promise<void> {
    try {
      await (await client).dispose();
    } catch (error) {
      this.log.warn(`Stopping the checker: ${String(error)}`);
    }
  }

  async #giveUp(): Promise<void> {
    const said = `The checker ended unexpectedly ${this.#ends.count} times within 3 minutes and is not started again.`;
    this.log.error(said);
    this.#gaveUp = true;
    this.#status.show({ state: "gave-up" });
    const [restart, show] = ["Restart the Checker", "Show Log"];
    const answer = await window.showErrorMessage(said, restart, show);
    if (answer === restart) await this.restart();
    else if (answer === show) this.log.show();
  }
}

function isEnabled(): boolean {
  return workspace.getConfiguration("edgewise").get<boolean>("enable", true);
}
