import { type ChildProcess, execFileSync, spawn } from "node:child_process";
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { type Browser, chromium, type Page } from "playwright-core";
import { expect } from "vitest";
import type { Packaged } from "./packaged.ts";
import { patience } from "./retrying.ts";

/** Chromium of Debian; EDGEWISE_CHROMIUM names another. */
const browserPath = process.env.EDGEWISE_CHROMIUM ?? "/usr/bin/chromium";

/** Keeps the window quiet: no welcome page, no assistants, no reports. */
const quietSettings = {
  "workbench.startupEditor": "none",
  "chat.disableAIFeatures": true,
  "workbench.secondarySideBar.defaultVisibility": "hidden",
  "telemetry.telemetryLevel": "off",
  "editor.hover.delay": 100,
  "files.autoSave": "off",
};

/** What the editor is opened on, below the folder of files. */
export interface Opened {
  /** Folders of a workspace of several; the folder of all files, where it is left out. */
  readonly folders?: readonly string[];
  /** URI of a folder that is on no disk, instead of any of these. */
  readonly address?: string;
  /** Further extensions, as packages. */
  readonly others?: readonly string[];
}

/** A served editor with the packaged extension in it, open on a folder of files, and a browser that shows it. */
export class EditorSession {
  readonly page: Page;
  /** The folder of all files. */
  readonly folder: string;
  readonly #server: ChildProcess;
  readonly #browser: Browser;
  readonly #scratch: string;

  private constructor(page: Page, server: ChildProcess, browser: Browser, scratch: string) {
    this.page = page;
    this.folder = folderIn(scratch);
    this.#server = server;
    this.#browser = browser;
    this.#scratch = scratch;
  }

  /** `settings` are the user's, on top of the quiet ones. */
  static async open(
    { host, vsix }: Packaged,
    files: Readonly<Record<string, string>>,
    settings: Readonly<Record<string, unknown>>,
    { folders, address, others = [] }: Opened = {},
  ): Promise<EditorSession> {
    const scratch = mkdtempSync(join(tmpdir(), "edgewise-editor-"));
    const userData = join(scratch, "user");
    const folder = folderIn(scratch);
    mkdirSync(join(userData, "User"), { recursive: true });
    writeFileSync(join(userData, "User", "settings.json"), JSON.stringify({ ...quietSettings, ...settings }));
    mkdirSync(folder);
    for (const [name, text] of Object.entries(files)) {
      mkdirSync(dirname(join(folder, name)), { recursive: true });
      writeFileSync(join(folder, name), text);
    }
    const workspace = join(folder, "several.code-workspace");
    if (folders !== undefined)
      writeFileSync(workspace, JSON.stringify({ folders: folders.map((path) => ({ path })) }));
    const opened = folders === undefined ? `folder=${address ?? folder}` : `workspace=${workspace}`;
    const extensions = join(scratch, "extensions");
    const shared = ["--user-data-dir", userData, "--extensions-dir", extensions];
    for (const each of [vsix, ...others]) {
      execFileSync(host.node, [host.entry, ...shared, "--install-extension", each], { stdio: "ignore" });
    }
    const port = await freePort();
    const server = spawn(
      host.node,
      [
        host.entry,
        ...shared,
        "--auth",
        "none",
        "--bind-addr",
        `127.0.0.1:${port}`,
        "--disable-telemetry",
        "--disable-update-check",
      ],
      { stdio: "ignore" },
    );
    const browser = await chromium.launch({
      executablePath: browserPath,
      args: [
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
      ],
    });
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    page.setDefaultTimeout(patience.timeout);
    const session = new EditorSession(page, server, browser, scratch);
    await answering(`http://127.0.0.1:${port}/healthz`);
    await page.goto(`http://127.0.0.1:${port}/?${opened}`);
    await page.waitForSelector(".monaco-workbench");
    return session;
  }

  /** Writes a file as another program would. */
  write(name: string, text: string): void {
    const file = join(this.folder, name);
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, text);
  }

  /** The text of a file; empty where there is none. */
  read(name: string): string {
    const file = join(this.folder, name);
    return existsSync(file) ? readFileSync(file, "utf8") : "";
  }

  /** Ids of the processes in which the extension's server runs, as Linux has them. */
  get servers(): readonly number[] {
    return processes().filter((id) => {
      const words = commandLine(id);
      return (
        words.includes("lsp") &&
        words.some((word) => word.startsWith(this.#scratch) && word.endsWith("edgewise.js"))
      );
    });
  }

  /** Kills the server's process once there is one; resolves when it is gone. */
  async killServer(): Promise<void> {
    await expect.poll(() => this.servers.length, patience).toBe(1);
    const [id] = this.servers;
    if (id === undefined) throw new Error("no server runs");
    process.kill(id, "SIGKILL");
    await expect.poll(() => this.servers.includes(id), patience).toBe(false);
  }

  /** Command lines of the extension's servers, a word each. */
  get serverCommands(): readonly (readonly string[])[] {
    return this.servers.map(commandLine);
  }

  /** Command lines of the processes that the extension's server has started. */
  get startedByServer(): readonly string[] {
    const { servers } = this;
    return processes()
      .filter((id) => servers.includes(parentOf(id)))
      .map((id) => commandLine(id).join(" "));
  }

  /** Names of the workers that the browser runs, those of workers among them. */
  async workers(): Promise<readonly string[]> {
    const session = await this.#browser.newBrowserCDPSession();
    const { targetInfos } = await session.send("Target.getTargets");
    await session.detach();
    return targetInfos.filter(({ type }) => type === "worker").map(({ title }) => title);
  }

  async close(): Promise<void> {
    await this.#browser.close();
    const ended = new Promise((resolve) => this.#server.once("exit", resolve));
    this.#server.kill();
    await ended;
    rmSync(this.#scratch, { recursive: true, force: true, maxRetries: 5 });
  }
}

function folderIn(scratch: string): string {
  return join(scratch, "firmware");
}

/** Ids of all that run. */
function processes(): readonly number[] {
  return readdirSync("/proc").map(Number).filter(Number.isInteger);
}

/** proc(5) of the Linux man-pages: `PPid` in `/proc/pid/status`; 0 where there is no such process. */
function parentOf(id: number): number {
  try {
    return Number(/^PPid:\s*(\d+)/m.exec(readFileSync(`/proc/${id}/status`, "utf8"))?.[1] ?? 0);
  } catch {
    return 0;
  }
}

/** Of a process; empty where there is none. */
function commandLine(id: number): readonly string[] {
  try {
    return readFileSync(`/proc/${id}/cmdline`, "utf8").split("\0");
  } catch {
    return [];
  }
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once("error", reject);
    probe.listen(0, "127.0.0.1", () => {
      const address = probe.address();
      probe.close(() => {
        if (address !== null && typeof address === "object") resolve(address.port);
        else reject(new Error("no port"));
      });
    });
  });
}

/** Resolves once something answers at `url`; the hook's own time limit bounds the wait. */
async function answering(url: string): Promise<void> {
  for (;;) {
    const response = await fetch(url).catch(() => undefined);
    if (response?.ok) return;
    await new Promise((resolve) => setTimeout(resolve, 250));
  }
}
