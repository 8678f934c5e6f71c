import { PassThrough } from "node:stream";
import { afterEach, describe, expect, test } from "vitest";
import { createMessageConnection, StreamMessageReader, StreamMessageWriter } from "vscode-jsonrpc/node";
import {
  createConnection,
  type Diagnostic,
  FileChangeType,
  type FileSystemWatcher,
  type Hover,
  type RegistrationParams,
  WatchKind,
} from "vscode-languageserver/node";
import type { Firmware } from "../../../server/language-server/client-messages/runs.ts";
import type { CheckStatus } from "../../../server/language-server/client-messages/status.ts";
import type { StartRunWorker } from "../../../server/language-server/runs/run-worker.ts";
import { serve } from "../../../server/language-server/serve.ts";
import { workersRunning } from "../../../server/language-server/trials/node/start-worker.ts";
import { PackageFiles } from "../../../server/package-files.ts";
import { hostOfFiles, type SourceHost } from "../../../src-core/reader/source-host.ts";
import { createService } from "../../../src-core/service/create-service.ts";
import { hostIgnoringCase } from "../../src-core/reader/host-ignoring-case.ts";
import { loadGrammar } from "../../src-core/reader/syntax/load-grammar.ts";
import { sampleFiles } from "../built/sample-files.ts";
import { serialSource } from "../built/sample-firmware.ts";

const grammar = await loadGrammar();
const closers: (() => void)[] = [];

afterEach(() => {
  for (const close of closers.splice(0)) close();
});

interface ClientOptions {
  readonly startRunWorker?: StartRunWorker;
  readonly initializationOptions?: object;
  /** It watches files for the server. */
  readonly watches?: boolean;
}

const idleRuns: StartRunWorker = () => ({ post: () => undefined, end: () => undefined });

/** A client of a server in this process, over `/w`, whose trials are left to one of the programs in `trials/node`. */
async function clientOf(
  program: string,
  disk: SourceHost,
  { startRunWorker = idleRuns, initializationOptions = {}, watches = false }: ClientOptions = {},
) {
  const [toServer, toClient] = [new PassThrough(), new PassThrough()];
  const server = createConnection(new StreamMessageReader(toServer), new StreamMessageWriter(toClient));
  const client = createMessageConnection(
    new StreamMessageReader(toClient),
    new StreamMessageWriter(toServer),
  );
  serve(server, {
    version: "0",
    disk,
    makeService: (host) => createService({ host, grammar, startName: "" }),
    startWorker: workersRunning(new URL(`trials/node/programs/${program}.mjs`, import.meta.url), 32),
    startRunWorker,
    matrixWorkers: 1,
    packageFiles: new PackageFiles(new URL("file:///package/")),
  });
  const told = new Map<string, readonly Diagnostic[]>();
  const log: string[] = [];
  let heard: () => void = () => undefined;
  client.onNotification("textDocument/publishDiagnostics", ({ uri, diagnostics }) => {
    told.set(uri, diagnostics);
    heard();
  });
  client.onNotification("window/logMessage", ({ message }) => {
    log.push(message);
  });
  client.listen();
  closers.push(() => {
    client.dispose();
    server.dispose();
  });
  const watched = new Promise<readonly FileSystemWatcher[]>((resolve) => {
    client.onRequest("client/registerCapability", ({ registrations }: RegistrationParams) => {
      resolve(registrations.flatMap(({ registerOptions }) => registerOptions?.watchers ?? []));
      return null;
    });
  });
  const statuses: CheckStatus[] = [];
  client.onNotification("edgewise/status", (now: CheckStatus) => {
    statuses.push(now);
    heard();
  });
  await client.sendRequest("initialize", {
    processId: null,
    rootUri: "file:///w",
    initializationOptions,
    capabilities: {
      workspace: { workspaceFolders: true, didChangeWatchedFiles: { dynamicRegistration: watches } },
    },
  });
  await client.sendNotification("initialized", {});
  const once = async <T>(said: () => T | undefined, wanted: (now: T) => boolean): Promise<T> => {
    for (;;) {
      const now = said();
      if (now !== undefined && wanted(now)) return now;
      await new Promise<void>((resolve) => {
        heard = resolve;
      });
    }
  };
  const diagnostics = (uri: string, wanted: (now: readonly Diagnostic[]) => boolean) =>
    once(() => told.get(uri), wanted);
  const isReady = ({ state }: CheckStatus) => state === "ready";
  const ready = () => once(() => statuses.at(-1), isReady);
  return { client, diagnostics, ready, log, watched, statuses };
}

test.each([
  ["hungry", "it needed more than 32 MB of memory"],
  ["throwing", "inner fault"],
  ["leaving", "the thread that runs it ended with code 3"],
])(
  "a worker that ends by itself costs no more than what it was to find out, and is told: %s",
  async (program, why) => {
    // 51 makes 19231 baud at 16 MHz: ATmega328P datasheet, baud rate equations.
    const note = "// @wire board atmega328p clock=16MHz\n// @wire serial uart=0 baud=1200 line=7N1\n";
    const text = `${note}${serialSource(51)}`;
    const { client, diagnostics, log } = await clientOf(program, hostOfFiles({ "/w/main.c": text }));
    const uri = "file:///w/main.c";
    const isTold = (now: readonly Diagnostic[]) => now.some(({ message }) => String(message).includes(why));
    const textDocument = { uri, languageId: "c", version: 1, text };
    await client.sendNotification("textDocument/didOpen", { textDocument });
    const first = await diagnostics(uri, isTold);
    const all = first.map(({ message, severity, code }) => ({ message: String(message), severity, code }));
    expect(all).toEqual([
      expect.objectContaining({ severity: 1, code: "serial/baud-error" }),
      {
        severity: 3,
        code: undefined,
        message: `the firmware could not be tried: ${why}; it is tried again after the next edit`,
      },
    ]);
    const position = { line: text.slice(0, text.indexOf("51;")).split("\n").length - 1, character: 13 };
    const hover = await client.sendRequest<Hover | null>("textDocument/hover", {
      textDocument: { uri },
      position,
    });
    expect(JSON.stringify(hover?.contents)).toContain("19231");

    // The next text is read and tried again, which fails again: the log has it once.
    await client.sendNotification("textDocument/didChange", {
      textDocument: { uri, version: 2 },
      contentChanges: [{ text: text.replace("51;", "832;") }],
    });
    const second = await diagnostics(uri, (now) => isTold(now) && now.length === 1);
    expect(second).toHaveLength(1);
    expect(log.filter((message) => message.includes(why))).toHaveLength(1);
    await client.sendRequest("shutdown");
  },
);

test("opening a file whose text is known leaves its trial alone", async () => {
  const text = "int main(void) { return 0; }\n";
  const { client, diagnostics } = await clientOf("counting", hostOfFiles({ "/w/main.c": text }));
  const uri = "file:///w/main.c";
  const textDocument = { uri, languageId: "c", version: 1, text };
  await client.sendNotification("textDocument/didOpen", { textDocument });
  const says = (count: number) => (now: readonly Diagnostic[]) =>
    now.some(({ message }) => String(message).includes(`trial ${count};`));
  await diagnostics(uri, says(1));
  await client.sendNotification("textDocument/didClose", { textDocument });
  await client.sendNotification("textDocument/didOpen", {
    textDocument: { ...textDocument, text: `${text}\n` },
  });
  await diagnostics(uri, says(2));
  await client.sendRequest("shutdown");
});

test("what is typed into a header counts, whatever the case of its name in an include", async () => {
  const note = "// @wire board atmega328p clock=16MHz\n// @wire serial uart=0 baud=1200 line=7N1\n";
  const disk = hostIgnoringCase({
    "/w/main.c": `${note}#include "Rate.h"\n${serialSource("DIVISOR")}`,
    "/w/rate.h": "#define DIVISOR 832\n",
  });
  const { client, diagnostics } = await clientOf("counting", disk);
  const hasBaudError = (now: readonly Diagnostic[]) => now.some(({ code }) => code === "serial/baud-error");
  await diagnostics("file:///w/main.c", (now) => !hasBaudError(now));
  const textDocument = { uri: "file:///w/rate.h", languageId: "c", version: 1, text: "#define DIVISOR 51\n" };
  await client.sendNotification("textDocument/didOpen", { textDocument });
  await diagnostics("file:///w/main.c", hasBaudError);
  await client.sendRequest("shutdown");
});

describe("files on disk", () => {
  const faulty = `// @wire board atmega328p clock=16MHz\n// @wire serial uart=0 baud=1200 line=7N1\n${serialSource(51)}`;

  /** A client that has heard of the first check, over files that a test may take away. */
  async function clientOver(files: Record<string, string>) {
    const started = await clientOf("endless", hostOfFiles(files), {
      initializationOptions: { status: true },
    });
    await started.client.sendRequest("edgewise/firmwares", {});
    const deleted = async (path: string) => {
      const gone = Object.keys(files).filter((each) => each === path || each.startsWith(`${path}/`));
      for (const each of gone) delete files[each];
      await started.client.sendNotification("workspace/didChangeWatchedFiles", {
        changes: [{ uri: `file://${path}`, type: FileChangeType.Deleted }],
      });
      await started.client.sendRequest("edgewise/firmwares", {});
    };
    return { ...started, deleted };
  }

  test("are watched: all that is deleted, and makefiles, which say where a project begins", async () => {
    const { client, watched } = await clientOf("endless", hostOfFiles({}), { watches: true });
    const watchers = await watched;
    const told = (kind: number) =>
      watchers.flatMap(({ globPattern, kind: kinds = 0 }) => ((kinds & kind) === 0 ? [] : [globPattern]));
    expect(told(WatchKind.Delete)).toEqual(["**/*"]);
    expect(told(WatchKind.Create)).toContainEqual(expect.stringMatching(/\bCMakeLists\.txt\b/));
    expect(told(WatchKind.Change)).toContainEqual(expect.stringMatching(/\bino\b/));
    await client.sendRequest("shutdown");
  });

  test("a folder that is deleted takes its firmware along, and its headers from others", async () => {
    const { client, diagnostics, deleted, ready } = await clientOver({
      "/w/a/main.c": '#include "../lib/h.h"\n',
      "/w/b/main.c": faulty,
      "/w/lib/h.h": "int h;\n",
    });
    await diagnostics("file:///w/b/main.c", (now) => now.some(({ code }) => code === "serial/baud-error"));
    await deleted("/w/b");
    await diagnostics("file:///w/b/main.c", (now) => now.length === 0);
    expect(await ready()).toMatchObject({ projects: 1, errors: 0 });
    await deleted("/w/lib");
    await diagnostics("file:///w/a/main.c", (now) =>
      now.some(({ message }) => /lib\/h\.h/.test(String(message))),
    );
    await client.sendRequest("shutdown");
  });

  test("outside of all folders are told of while they are open", async () => {
    const { client, diagnostics, ready } = await clientOver({
      "/w/main.c": "",
      "/elsewhere/main.c": faulty,
    });
    const uri = "file:///elsewhere/main.c";
    await client.sendNotification("textDocument/didOpen", {
      textDocument: { uri, languageId: "c", version: 1, text: faulty },
    });
    await diagnostics(uri, (now) => now.some(({ code }) => code === "serial/baud-error"));
    await client.sendNotification("textDocument/didClose", { textDocument: { uri } });
    await diagnostics(uri, (now) => now.length === 0);
    const firmwares = await client.sendRequest<readonly Firmware[]>("edgewise/firmwares", {});
    expect(firmwares.map(({ project }) => project)).toEqual(["/w"]);
    expect(await ready()).toMatchObject({ projects: 1, errors: 0 });
    await client.sendRequest("shutdown");
  });

  test("what no firmware is made of may go without a check", async () => {
    const { client, deleted, statuses } = await clientOver({ "/w/main.c": faulty, "/w/build/main.o": "" });
    const checks = () => statuses.filter(({ state }) => state === "checking").length;
    const before = checks();
    await deleted("/w/build/main.o");
    await deleted("/w/build");
    expect(checks()).toBe(before);
    await deleted("/w/main.c");
    expect(checks()).toBeGreaterThan(before);
    await client.sendRequest("shutdown");
  });
});

describe("a matrix", () => {
  const few = { mice: ["plain"], pcs: ["rts-toggle"], strokes: ["nudge"] };
  const sample = Object.entries(sampleFiles("ferry-c", few));
  const disk = hostOfFiles(Object.fromEntries(sample.map(([name, text]) => [`/w/${name}`, text])));

  test("whose firmware's folder is removed is ended, and why is said", async () => {
    let ended = 0;
    let asked: () => void = () => undefined;
    const isAsked = new Promise<void>((resolve) => {
      asked = resolve;
    });
    const { client } = await clientOf("endless", disk, {
      startRunWorker: () => ({ post: asked, end: () => void ended++ }),
    });
    await client.sendRequest("edgewise/firmwares", {});
    const answer = client.sendRequest("edgewise/matrixRun", { project: "/w", matrix: 1 });
    await isAsked;
    await client.sendNotification("workspace/didChangeWorkspaceFolders", {
      event: { added: [], removed: [{ uri: "file:///w", name: "w" }] },
    });
    expect(await answer).toEqual({ kind: "cannot", message: "the firmware is not checked any more" });
    expect(ended).toBe(1);
    await client.sendRequest("edgewise/firmwares", {});
    await client.sendRequest("shutdown");
  });

  test("that fails leads to the log", async () => {
    const { client, log } = await clientOf("endless", disk, {
      startRunWorker: () => {
        throw new Error("inner fault");
      },
    });
    await client.sendRequest("edgewise/firmwares", {});
    expect(await client.sendRequest("edgewise/matrixRun", { project: "/w", matrix: 1 })).toEqual({
      kind: "cannot",
      message: "the matrix failed; the log says why",
    });
    expect(log.filter((message) => message.includes("inner fault"))).toHaveLength(1);
    await client.sendRequest("shutdown");
  });
});
