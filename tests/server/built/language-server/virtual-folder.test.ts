import { describe, expect, test } from "vitest";
import type { Diagnostic } from "vscode-languageserver/node";
import type { CellVerdict } from "../../../../server/language-server/client-messages/matrix.ts";
import type { Firmware, RunAnswer } from "../../../../server/language-server/client-messages/runs.ts";
import { encoderFirmware, rightMark, wrongMark } from "../encoder-firmware.ts";
import { sampleFiles } from "../sample-files.ts";
import { faultyFirmware, rightDivisor, serialSource } from "../sample-firmware.ts";
import { ScratchFolder } from "../scratch-folder.ts";
import { MemoryFiles } from "./memory-files.ts";
import { Session } from "./session.ts";
import { followSession } from "./sessions.ts";

const root = "memory://harbour/firmware";
const isClean = (diagnostics: readonly Diagnostic[]) => diagnostics.length === 0;
const has = (rule: string) => (diagnostics: readonly Diagnostic[]) =>
  diagnostics.some(({ code }) => code === rule);

/** A session over files that no disk has, in the folder `open`. */
async function sessionOverMemory(
  files: Readonly<Record<string, string>>,
  held = Promise.resolve(),
  open = root,
) {
  const session = followSession(new Session(new ScratchFolder({}), open));
  const memory = new MemoryFiles(open, files);
  memory.held = held;
  memory.answerRequestsOf(session.connection);
  await session.start({ status: true, files: true });
  return { session, memory };
}

describe("a folder that only the client can read", () => {
  test("is checked before anything of it is open, and again while it is edited", async () => {
    const { session } = await sessionOverMemory({
      "src/main.c": faultyFirmware["main.c"],
      "edgewise.json": faultyFirmware["edgewise.json"],
    });
    await session.diagnostics("src/main.c", has("serial/baud-error"));
    await session.open("src/main.c", faultyFirmware["main.c"]);
    await session.change("src/main.c", 2, serialSource(rightDivisor));
    await session.diagnostics("src/main.c", isClean);
  });

  test("what was asked before its files came is not what is known behind that", async () => {
    let come: () => void = () => undefined;
    const held = new Promise<void>((resolve) => {
      come = resolve;
    });
    const { session } = await sessionOverMemory(faultyFirmware, held);
    await session.open("main.c", faultyFirmware["main.c"]);
    await session.hover("main.c", { line: 4, character: "    UBRR0 = 5".length });
    come();
    await session.diagnostics("main.c", has("serial/baud-error"));
  });

  test("its headers are found, and a changed one is read again", async () => {
    const header = (divisor: number) => `#define DIVISOR ${divisor}\n`;
    const source = `#include "rate.h"\n${serialSource("DIVISOR")}`;
    const { session, memory } = await sessionOverMemory({
      ...faultyFirmware,
      "main.c": source,
      "rate.h": header(51),
    });
    await session.diagnostics("main.c", has("serial/baud-error"));
    const uri = session.uri("rate.h");
    memory.texts.set(uri, header(rightDivisor));
    await session.notify("workspace/didChangeWatchedFiles", { changes: [{ uri, type: 2 }] });
    await session.diagnostics("main.c", isClean);
    memory.texts.delete(uri);
    await session.notify("workspace/didChangeWatchedFiles", { changes: [{ uri, type: 3 }] });
    const [lost] = await session.diagnostics("main.c", (now) => now.length > 0);
    expect(lost?.message).toContain("rate.h");
  });

  test("a file that comes is checked, a buffer that is saved and closed stays what it was", async () => {
    const { session, memory } = await sessionOverMemory(faultyFirmware);
    await session.open("main.c", faultyFirmware["main.c"]);
    await session.diagnostics("main.c", has("serial/baud-error"));
    await session.change("main.c", 2, serialSource(rightDivisor));
    await session.diagnostics("main.c", isClean);
    const textDocument = { uri: session.uri("main.c") };
    await session.notify("textDocument/didSave", { textDocument });
    await session.notify("textDocument/didClose", { textDocument });
    const added = ["second/edgewise.json", "second/main.c"].map((name) => session.uri(name));
    for (const [index, text] of [faultyFirmware["edgewise.json"], serialSource(51)].entries()) {
      memory.texts.set(added[index] ?? "", text);
    }
    await session.notify("workspace/didChangeWatchedFiles", {
      changes: added.map((uri) => ({ uri, type: 1 })),
    });
    await session.diagnostics("second/main.c", has("serial/baud-error"));
    const ofMain = session.published.filter((each) => each.uri === session.uri("main.c"));
    expect(ofMain.at(-1)?.diagnostics).toEqual([]);
  });

  test("encoders are tried, the firmware is run and its matrix fills", async () => {
    const { session } = await sessionOverMemory({ "main.c": encoderFirmware(wrongMark) });
    await session.diagnostics("main.c", has("report/sync-bit"));
    await session.open("main.c", encoderFirmware(wrongMark));
    await session.change("main.c", 2, encoderFirmware(rightMark));
    await session.diagnostics("main.c", isClean);

    const few = { mice: ["plain", "wheel"], pcs: ["rts-toggle"], strokes: ["nudge"] };
    const { session: ferry } = await sessionOverMemory(sampleFiles("ferry-c", few));
    const [firmware] = await ferry.request<readonly Firmware[]>("edgewise/firmwares", {});
    expect(firmware?.root).toBe(root);
    const project = firmware?.project;
    const run = await ferry.request<RunAnswer>("edgewise/run", {
      project,
      stroke: "nudge",
      mouse: "plain",
      pc: "rts-toggle",
    });
    expect(run).toMatchObject({ kind: "run", root, overview: { passed: true } });
    const cells: CellVerdict[] = [];
    ferry.onCell = (_, cell) => cells.push(cell);
    await ferry.request("edgewise/matrixRun", { project, matrix: 1 });
    expect(cells.map(({ mouse, verdict }) => `${mouse} ${verdict}`).sort()).toEqual([
      "plain passed",
      "wheel passed",
    ]);
  });

  test("one that is all that its provider has is run as well", async () => {
    const open = "memory://harbour/";
    const { session } = await sessionOverMemory(sampleFiles("ferry-c", {}), undefined, open);
    const [firmware] = await session.request<readonly Firmware[]>("edgewise/firmwares", {});
    expect(firmware?.root).toBe(open);
    const run = await session.request<RunAnswer>("edgewise/run", {
      project: firmware?.project,
      stroke: "nudge",
      mouse: "plain",
      pc: "rts-toggle",
    });
    expect(run).toMatchObject({ kind: "run", root: open, overview: { passed: true } });
  });

  test("only sources, settings and makefiles are read, and not those of build folders", async () => {
    const { session, memory } = await sessionOverMemory({
      ...faultyFirmware,
      "picture.png": "no source",
      "node_modules/thing/main.c": "int main;",
      ".hidden/main.c": "int main;",
      "build/main.c": "int main;",
      Makefile: "all:",
    });
    await session.diagnostics("main.c", has("serial/baud-error"));
    expect(memory.reads.sort()).toEqual(
      ["Makefile", "edgewise.json", "main.c"].map((name) => `${root}/${name}`),
    );
  });
});
