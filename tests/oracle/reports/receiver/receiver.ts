import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { connect, type Socket } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import type { Answer } from "./mice.ts";
import { connectionTo, gpmSocket, type PointerEvent, takeEvents } from "./pointer-events.ts";

/** How long to wait for what gpm has to say, in milliseconds: much longer than it needs on a busy machine. */
const patience = 20_000;

/** The first virtual console, for which gpm tells its events when there is no other. */
const firstConsole = 1;

/**
 * gpm reading a pseudo-terminal, told all it does on that as a client of its. It accelerates nothing (`-a 1`), takes
 * each count as a step (`-r 100`) and knows three buttons (`-3`), see gpm(8).
 */
export class Receiver {
  readonly #folder: string;
  readonly #line: ChildProcess;
  readonly #gpm: ChildProcess;
  #client: Socket | undefined;
  #log = "";
  #received: Buffer = Buffer.alloc(0);
  readonly #events: PointerEvent[] = [];

  private constructor(type: string, answer: Answer) {
    this.#folder = mkdtempSync(join(tmpdir(), "receiver-"));
    const port = join(this.#folder, "mouse");
    this.#line = spawn("socat", [`pty,raw,echo=0,link=${port}`, "STDIO"]);
    this.#line.stdout?.on("data", (bytes: Buffer) => {
      for (const byte of bytes) if (answer !== undefined) this.#write(answer(byte));
    });
    // Ends with its time, should this process be killed before it ends it.
    const options = ["-D", "-a", "1", "-r", "100", "-3", "-m", port, "-t", type];
    const script = 'while [ ! -e "$0" ]; do sleep 0.05; done; exec gpm "$@"';
    this.#gpm = spawn("timeout", ["--kill-after=2", "600", "sh", "-c", script, port, ...options]);
    for (const output of [this.#gpm.stdout, this.#gpm.stderr]) {
      output?.on("data", (text: Buffer) => {
        this.#log += text.toString();
      });
    }
    for (const [name, child] of [["socat", this.#line] as const, ["timeout", this.#gpm] as const]) {
      child.once("error", (error) => {
        this.#log += `${name}: ${error.message}\n`;
      });
    }
  }

  /**
   * Starts gpm for a type of mouse.
   * @throws where gpm does not come to the point at which it would tell what it reads.
   */
  static async start(type: string, answer: Answer): Promise<Receiver> {
    const other = runningGpm();
    if (other !== undefined) throw new Error(`gpm runs here already, as process ${other}: end that first.`);
    rmSync(gpmSocket, { force: true });
    const receiver = new Receiver(type, answer);
    try {
      await receiver.#connect();
      // The place of the pointer, which a client is told first.
      await receiver.next();
    } catch (error) {
      await receiver.end();
      throw error;
    }
    return receiver;
  }

  send(bytes: readonly number[]): void {
    this.#write(bytes);
  }

  /** The next event. @throws where none comes within so many milliseconds. */
  async next(milliseconds = patience): Promise<PointerEvent> {
    for (const end = Date.now() + milliseconds; ; ) {
      const event = this.#events.shift();
      if (event !== undefined) return event;
      this.#expectMore(end);
      await wait(1);
    }
  }

  /** Ends gpm before its mouse goes away, without which it would run on. */
  async end(): Promise<void> {
    this.#client?.destroy();
    for (const child of [this.#gpm, this.#line]) {
      if (child.pid === undefined || child.exitCode !== null || child.signalCode !== null) continue;
      const ended = once(child, "exit");
      child.kill();
      await ended;
    }
    rmSync(this.#folder, { recursive: true, force: true });
  }

  #write(bytes: readonly number[]): void {
    if (bytes.length > 0) this.#line.stdin?.write(Buffer.from(bytes));
  }

  async #connect(): Promise<void> {
    const end = Date.now() + patience;
    let client = await connected();
    // The socket is there before anyone listens.
    for (; client === undefined; client = await connected()) {
      this.#expectMore(end);
      await wait(20);
    }
    this.#client = client;
    client.on("error", (error) => {
      this.#log += `${gpmSocket}: ${error.message}\n`;
    });
    client.on("data", (bytes: Buffer) => {
      const { events, rest } = takeEvents(Buffer.concat([this.#received, bytes]));
      this.#received = rest;
      this.#events.push(...events);
    });
    client.write(connectionTo(firstConsole));
  }

  #expectMore(end: number): void {
    if (this.#gpm.exitCode !== null) throw new Error(`gpm ended by itself. It said:\n${this.#log}`);
    if (Date.now() > end) throw new Error(`gpm tells nothing. It said:\n${this.#log}`);
  }
}

/** A connection to gpm; undefined where it takes none yet. */
async function connected(): Promise<Socket | undefined> {
  const client = connect(gpmSocket);
  try {
    await once(client, "connect");
    return client;
  } catch {
    return undefined;
  }
}

/** The number of a running gpm, of which there can be but one (gpm(8), "BUGS"). */
function runningGpm(): number | undefined {
  try {
    const id = Number(readFileSync("/var/run/gpm.pid", "utf8"));
    process.kill(id, 0);
    return id;
  } catch {
    return undefined;
  }
}
