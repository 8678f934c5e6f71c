import { spawn } from "node:child_process";
import { expect, test } from "vitest";
import { CancellationTokenSource } from "vscode-jsonrpc/node";
import { program } from "../program.ts";
import { faultyFirmware, serialSource } from "../sample-firmware.ts";
import type { Session } from "./session.ts";
import { sessionOver } from "./sessions.ts";

const isFaulty = (diagnostics: readonly { readonly code?: unknown }[]) =>
  diagnostics.some(({ code }) => code === "serial/baud-error");

/** The server still answers: a change is checked and a shutdown is clean. */
async function expectAlive(session: Session): Promise<void> {
  await session.open("main.c", serialSource(832));
  await session.diagnostics("main.c", (diagnostics) => diagnostics.length === 0);
  await session.change("main.c", 2, serialSource(51));
  await session.diagnostics("main.c", isFaulty);
  expect(await session.end()).toBe(0);
}

test("a request that does not exist is answered with MethodNotFound", async () => {
  const session = await sessionOver(faultyFirmware);
  await session.diagnostics("main.c", isFaulty);
  // -32601: JSON-RPC 2.0 specification, 5.1.
  await expect(session.request("edgewise/noSuchThing", {})).rejects.toMatchObject({ code: -32601 });
  await expectAlive(session);
});

test.each([
  ["no parameters", undefined],
  [
    "a document that is not open",
    { textDocument: { uri: "file:///nowhere.c" }, position: { line: 0, character: 0 } },
  ],
  ["no document", { position: { line: 0, character: 0 } }],
  ["a URI that is none", { textDocument: { uri: "\u0000" }, position: { line: 0, character: 0 } }],
  ["a position out of all bounds", { textDocument: { uri: "" }, position: { line: -5, character: 1e9 } }],
  ["a string", "hover"],
])("requests with %s are survived", async (_, parameters) => {
  const session = await sessionOver(faultyFirmware);
  await session.diagnostics("main.c", isFaulty);
  for (const method of ["hover", "completion", "codeAction"]) {
    await session.request(`textDocument/${method}`, parameters).catch(() => undefined);
  }
  for (const method of [
    "textDocument/didChange",
    "workspace/didChangeWatchedFiles",
    "textDocument/didClose",
  ]) {
    await session.notify(method, parameters);
  }
  await expectAlive(session);
});

test("a request that is taken back is answered, and so are those after it", async () => {
  const session = await sessionOver(faultyFirmware);
  await session.diagnostics("main.c", isFaulty);
  await session.open("main.c", serialSource(51));
  const position = { line: 4, character: 13 };
  const takenBack = new CancellationTokenSource();
  const first = session.hover("main.c", position, takenBack.token);
  takenBack.cancel();
  expect(await first).toBeNull();
  expect(await session.hover("main.c", position)).not.toBeNull();
});

test("bytes that are no message are survived", async () => {
  const session = await sessionOver(faultyFirmware);
  await session.diagnostics("main.c", isFaulty);
  session.process.stdin?.write('Content-Length: 9\r\n\r\n{"json":}');
  session.process.stdin?.write("Content-Length: 4\r\n\r\nnull");
  await expectAlive(session);
});

test("a source of several megabytes is opened, changed and closed", async () => {
  const session = await sessionOver(faultyFirmware);
  await session.diagnostics("main.c", isFaulty);
  const line = "static const unsigned char pad[] = { 1, 2, 3 };\n";
  await session.open("giant.c", line.repeat(Math.ceil(3_000_000 / line.length)));
  await session.change("giant.c", 2, "{", {
    start: { line: 7, character: 0 },
    end: { line: 7, character: 3 },
  });
  await session.notify("textDocument/didClose", { textDocument: { uri: session.uri("giant.c") } });
  await expectAlive(session);
});

test("text that is cut off anywhere, and text that is no text, is survived", async () => {
  const session = await sessionOver(faultyFirmware);
  await session.diagnostics("main.c", isFaulty);
  const whole = serialSource(51);
  await session.open("main.c", "");
  let version = 1;
  for (let end = 0; end < whole.length; end += 7)
    await session.change("main.c", ++version, whole.slice(0, end));
  await session.change("main.c", ++version, '\u0000\ud800 \uffff#include "main.c"\n#define A A A(\nA');
  await session.change("main.c", ++version, whole);
  await session.notify("textDocument/didClose", { textDocument: { uri: session.uri("main.c") } });
  await expectAlive(session);
});

test("a client that goes away in the middle takes the server with it", async () => {
  const session = await sessionOver(faultyFirmware);
  await session.open("main.c", serialSource(51));
  session.process.stdin?.end();
  expect(await session.exited).not.toBeNull();
});

test("exit without shutdown ends with code 1, as the protocol says", async () => {
  const session = await sessionOver(faultyFirmware);
  await session.notify("exit", undefined);
  expect(await session.exited).toBe(1);
});

test("nothing but the protocol is written to standard output", async () => {
  const child = spawn(process.execPath, [program, "lsp", "--stdio"], { stdio: ["pipe", "pipe", "ignore"] });
  const written: Buffer[] = [];
  // The protocol asks the client to wait with `exit` until `shutdown` is answered.
  const shutDown = new Promise<void>((resolve) => {
    child.stdout.on("data", (data: Buffer) => {
      written.push(data);
      if (/"id":2\b/.test(Buffer.concat(written).toString("latin1"))) resolve();
    });
  });
  const closed = new Promise((resolve) => child.on("close", resolve));
  const send = (message: object) => {
    const body = JSON.stringify({ jsonrpc: "2.0", ...message });
    child.stdin.write(`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
  };
  send({ id: 1, method: "initialize", params: { processId: null, rootUri: null, capabilities: {} } });
  send({ method: "initialized", params: {} });
  send({ id: 2, method: "shutdown" });
  await Promise.race([shutDown, closed]);
  send({ method: "exit" });
  await closed;
  // Base protocol of the Language Server Protocol: header fields, an empty line, so many bytes of JSON.
  let rest = Buffer.concat(written);
  const answered: unknown[] = [];
  while (rest.length > 0) {
    const header = /^Content-Length: (\d+)\r\n\r\n/.exec(rest.toString("latin1"));
    expect(header).not.toBeNull();
    const start = header?.[0].length ?? 0;
    const end = start + Number(header?.[1]);
    answered.push(JSON.parse(rest.toString("utf8", start, end)).id);
    rest = rest.subarray(end);
  }
  expect(answered).toEqual(expect.arrayContaining([1, 2]));
});
