import { describe, expect, test } from "vitest";
import type { Diagnostic } from "vscode-languageserver/node";
import { TextDocument } from "vscode-languageserver-textdocument";
import {
  encoderFirmware,
  halfAllowedFirmware,
  rightMark,
  slowFirmware,
  wrongMark,
} from "../encoder-firmware.ts";
import type { Session } from "./session.ts";
import { sessionOver } from "./sessions.ts";

const right = encoderFirmware(rightMark);
const wrong = encoderFirmware(wrongMark);
const rule = "report/sync-bit";
const isFaulty = (diagnostics: readonly Diagnostic[]) => diagnostics.some(({ code }) => code === rule);
const isClean = (diagnostics: readonly Diagnostic[]) => diagnostics.length === 0;

/** The line (from 0) of the first byte's statement. */
const lineOfFirstByte = right.split("\n").findIndex((line) => line.includes("out[0]"));

/** Every rule that was ever told of `main.c`. */
function rulesTold(session: Session): ReadonlySet<unknown> {
  const ofMain = session.published.filter(({ uri }) => uri === session.uri("main.c"));
  return new Set(ofMain.flatMap(({ diagnostics }) => diagnostics.map(({ code }) => code)));
}

/** A hover and a completion are answered with what they should say. */
async function expectAnswers(session: Session, text: string): Promise<void> {
  const lines = text.split("\n");
  const note = lines.findIndex((line) => line.includes("@wire encodes"));
  const hover = await session.hover("main.c", { line: note, character: "// @wire en".length });
  expect(JSON.stringify(hover?.contents)).toContain("encodes");
  const items = await session.completion("main.c", { line: note, character: "// @wire en".length });
  expect(items.map(({ label }) => label)).toContain("encodes");
}

describe("an encoder is run while the firmware is edited", () => {
  test("its fault is told at the expression, goes with the right edit, and comes back with the wrong one", async () => {
    const session = await sessionOver({ "main.c": wrong }, { status: true });
    await session.open("main.c", wrong);
    const diagnostics = await session.diagnostics("main.c", isFaulty);
    expect(diagnostics).toHaveLength(1);
    expect(diagnostics[0]).toMatchObject({
      severity: 1,
      range: { start: { line: lineOfFirstByte }, end: { line: lineOfFirstByte } },
    });
    await session.status((status) => (status as { errors?: number }).errors === 1);
    await session.change("main.c", 2, right);
    await session.diagnostics("main.c", isClean);
    await session.change("main.c", 3, wrong);
    await session.diagnostics("main.c", isFaulty);
    expect(await session.end()).toBe(0);
  });

  test("nothing has to be open for it", async () => {
    const session = await sessionOver({ "main.c": wrong });
    expect(await session.diagnostics("main.c", isFaulty)).toHaveLength(1);
  });

  test("an unsaved header counts, as does one that changed on disk", async () => {
    const header = (mark: string) => `#define MARK ${mark}0\n`;
    const main = `#include "mark.h"\n${encoderFirmware("MARK | ")}`;
    const session = await sessionOver({ "main.c": main, "mark.h": header(rightMark) });
    await session.open("mark.h", header(rightMark));
    await session.change("mark.h", 2, header(wrongMark));
    await session.diagnostics("main.c", isFaulty);
    await session.notify("textDocument/didClose", { textDocument: { uri: session.uri("mark.h") } });
    await session.diagnostics("main.c", isClean);
    session.folder.write("mark.h", header(wrongMark));
    await session.notify("workspace/didChangeWatchedFiles", {
      changes: [{ uri: session.uri("mark.h"), type: 2 }],
    });
    await session.diagnostics("main.c", isFaulty);
  });

  test("the fault can be accepted by the note that is offered", async () => {
    const session = await sessionOver({ "main.c": wrong });
    await session.open("main.c", wrong);
    const diagnostics = await session.diagnostics("main.c", isFaulty);
    const [diagnostic] = diagnostics;
    if (diagnostic === undefined) throw new Error("no diagnostic");
    const actions = await session.codeActions("main.c", diagnostic.range, diagnostics);
    const allow = actions.find(({ title }) => title.includes("Allow"));
    const edits = allow?.edit?.changes?.[session.uri("main.c")] ?? [];
    const noted = TextDocument.applyEdits(TextDocument.create("file:///main.c", "c", 1, wrong), edits);
    expect(noted).toContain(`@wire allow ${rule} because`);
    await session.change("main.c", 2, noted);
    await session.diagnostics("main.c", isClean);
    // Once the fault is mended as well, the note has nothing to allow: which only a run can tell.
    await session.change("main.c", 3, noted.replace("out[0] = ", `out[0] = ${rightMark}`));
    await session.diagnostics("main.c", (now) => now.some(({ code }) => code === "note/unattached"));
  });

  test("one that no note names is found, and its note is offered", async () => {
    const [note = ""] = right.match(/\/\/ @wire encodes.*\n/) ?? [];
    const bare = right.replace(note, "");
    const session = await sessionOver({ "main.c": bare });
    await session.open("main.c", bare);
    const [hint] = await session.diagnostics("main.c", (now) => now.length > 0);
    expect(hint).toMatchObject({ severity: 4, message: expect.stringContaining("encode") });
    if (hint === undefined) throw new Error("no hint");
    const actions = await session.codeActions("main.c", hint.range, [hint]);
    const edits = actions.flatMap(({ edit }) => edit?.changes?.[session.uri("main.c")] ?? []);
    const noted = TextDocument.applyEdits(TextDocument.create("file:///main.c", "c", 1, bare), edits);
    expect(noted).toContain("@wire encodes two-button");
    await session.change("main.c", 2, noted.replace(rightMark, wrongMark));
    await session.diagnostics("main.c", isFaulty);
  });

  test("an allow is not called unattached before the run, and silences the finding after it", async () => {
    const text = halfAllowedFirmware();
    const session = await sessionOver({ "main.c": text });
    const diagnostics = await session.diagnostics("main.c", isFaulty);
    const lines = text.split("\n");
    const lineOfFault = lines.findLastIndex((line) => line.includes("out[0]"));
    expect(diagnostics.map(({ range }) => range.start.line)).toEqual([lineOfFault]);
    expect(rulesTold(session)).toEqual(new Set([rule]));
  });
});

describe("code that does not end, or does what it should not", () => {
  test.each([
    ["a loop without end", "for (;;) { }", /could not be tried.*loop without end/],
    [
      "recursion without end",
      "encode(out, dx, dy, left, right);",
      /could not be tried.*recursion without end/,
    ],
    [
      "memory taken without end",
      "for (;;) { uint8_t *more = malloc(100); more[0] = 1; }",
      /could not be tried.*loop without end/,
    ],
    [
      "an object larger than the chip's memory",
      "static uint8_t huge[60000]; huge[left] = 1;",
      /could not be tried.*no memory left/,
    ],
    ["a wild pointer", "*(volatile uint8_t *)0xBEEF = 1;", /while `encode` was tried: writes at 0xbeef/],
  ])(
    "%s is told in one line, and the server answers meanwhile and afterwards",
    async (_, before, expected) => {
      const text = encoderFirmware(rightMark, before);
      const session = await sessionOver({ "main.c": text });
      await session.open("main.c", text);
      await expectAnswers(session, text);
      const told = (diagnostics: readonly Diagnostic[]) =>
        diagnostics.filter(({ message }) => String(message).includes("tried"));
      const diagnostics = told(await session.diagnostics("main.c", (now) => told(now).length > 0));
      expect(diagnostics).toHaveLength(1);
      // A hint: Language Server Protocol, DiagnosticSeverity.
      expect(diagnostics[0]).toMatchObject({ severity: 4, message: expect.stringMatching(expected) });
      expect(diagnostics[0]?.message).not.toContain("\n");
      await expectAnswers(session, text);
      await session.change("main.c", 2, wrong);
      await session.diagnostics("main.c", isFaulty);
      expect(await session.end()).toBe(0);
    },
  );
});

describe("while a long run goes on", () => {
  const slow = slowFirmware(wrongMark);
  const isReady = (status: unknown) => (status as { state: string }).state === "ready";

  test("requests are answered before its findings come", async () => {
    const session = await sessionOver({ "main.c": slow }, { status: true });
    await session.open("main.c", slow);
    await session.status(isReady);
    await expectAnswers(session, slow);
    expect(rulesTold(session)).toEqual(new Set());
    await session.diagnostics("main.c", isFaulty);
  });

  test("an edit takes its place: only the newest text is told of", async () => {
    const session = await sessionOver({ "main.c": slow }, { status: true });
    await session.open("main.c", slow);
    await session.status(isReady);
    for (let version = 2; version < 20; version++) {
      await session.change("main.c", version, "\n", {
        start: { line: 0, character: 0 },
        end: { line: 0, character: 0 },
      });
      await expectAnswers(session, "\n".repeat(version - 1) + slow);
    }
    expect(rulesTold(session)).toEqual(new Set());
    await session.change("main.c", 20, encoderFirmware(""));
    const [fault] = await session.diagnostics("main.c", isFaulty);
    expect(fault?.range.start.line).toBe(lineOfFirstByte);
  });

  test("the session ends as the protocol says", async () => {
    const session = await sessionOver({ "main.c": slow }, { status: true });
    await session.status(isReady);
    expect(await session.end()).toBe(0);
  });
});
