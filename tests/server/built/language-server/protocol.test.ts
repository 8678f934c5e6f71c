import { pathToFileURL } from "node:url";
import { describe, expect, test } from "vitest";
import type { Diagnostic } from "vscode-languageserver/node";
import { TextDocument } from "vscode-languageserver-textdocument";
import { faultyFirmware, rightDivisor, serialSource } from "../sample-firmware.ts";
import { sessionOver } from "./sessions.ts";

const rulesOf = (diagnostics: readonly Diagnostic[]) => diagnostics.map(({ code }) => code);
const hasBaudError = (diagnostics: readonly Diagnostic[]) =>
  rulesOf(diagnostics).includes("serial/baud-error");
const isClean = (diagnostics: readonly Diagnostic[]) => diagnostics.length === 0;

/** Where `|` stands in a text, and the text without it. */
function atCursor(marked: string) {
  const offset = marked.indexOf("|");
  const text = marked.replace("|", "");
  return { text, position: TextDocument.create("file:///x", "c", 0, text).positionAt(offset) };
}

describe("an editing session", () => {
  test("a folder is checked without any file being opened", async () => {
    const session = await sessionOver(faultyFirmware);
    const diagnostics = await session.diagnostics("main.c", hasBaudError);
    expect(diagnostics).toHaveLength(1);
    expect(diagnostics[0]).toMatchObject({
      source: "edgewise",
      severity: 1,
      range: { start: { line: 4 }, end: { line: 4 } },
      codeDescription: { href: pathToFileURL("docs/rules/serial/baud-error.md").href },
    });
  });

  test("diagnostics follow the unsaved text, in whole and in part", async () => {
    const session = await sessionOver(faultyFirmware);
    await session.open("main.c", faultyFirmware["main.c"]);
    await session.diagnostics("main.c", hasBaudError);
    await session.change("main.c", 2, serialSource(rightDivisor));
    await session.diagnostics("main.c", isClean);
    const line = "    UBRR0 = ".length;
    const divisor = { start: { line: 4, character: line }, end: { line: 4, character: line + 3 } };
    await session.change("main.c", 3, "25", divisor);
    await session.diagnostics("main.c", hasBaudError);
  });

  test("a change in an unsaved header is told in the sources that include it", async () => {
    const header = (divisor: number) => `#define DIVISOR ${divisor}\n`;
    const session = await sessionOver({
      ...faultyFirmware,
      "divisor.h": header(rightDivisor),
      "main.c": `#include "divisor.h"\n${serialSource("DIVISOR")}`,
    });
    await session.open("divisor.h", header(rightDivisor));
    await session.change("divisor.h", 2, header(51));
    const found = await session.diagnostics("main.c", hasBaudError);
    expect(found).toHaveLength(1);
    await session.change("divisor.h", 3, header(rightDivisor));
    await session.diagnostics("main.c", isClean);
  });

  test("closing without saving goes back to the text on disk", async () => {
    const session = await sessionOver(faultyFirmware);
    await session.diagnostics("main.c", hasBaudError);
    await session.open("main.c", serialSource(rightDivisor));
    await session.diagnostics("main.c", isClean);
    await session.notify("textDocument/didClose", { textDocument: { uri: session.uri("main.c") } });
    await session.diagnostics("main.c", hasBaudError);
  });

  test("a change on disk is followed when the editor tells of it", async () => {
    const session = await sessionOver(faultyFirmware);
    await session.diagnostics("main.c", hasBaudError);
    session.folder.write("main.c", serialSource(rightDivisor));
    await session.notify("workspace/didChangeWatchedFiles", {
      changes: [{ uri: session.uri("main.c"), type: 2 }],
    });
    await session.diagnostics("main.c", isClean);
  });

  test("a fault in unsaved settings is shown in edgewise.json", async () => {
    const session = await sessionOver(faultyFirmware);
    await session.diagnostics("main.c", hasBaudError);
    await session.open("edgewise.json", '{ "bord": {} }', "json");
    const [fault] = await session.diagnostics("edgewise.json", (diagnostics) => diagnostics.length > 0);
    expect(fault?.message).toContain("`board`");
  });

  test("a hover explains the divisor", async () => {
    const { text, position } = atCursor(serialSource("5|1"));
    const session = await sessionOver(faultyFirmware);
    await session.open("main.c", text);
    await session.diagnostics("main.c", hasBaudError);
    const hover = await session.hover("main.c", position);
    expect(JSON.stringify(hover?.contents)).toContain("baud");
  });

  test("a quick fix writes the divisor that was computed", async () => {
    const session = await sessionOver(faultyFirmware);
    await session.open("main.c", faultyFirmware["main.c"]);
    const diagnostics = await session.diagnostics("main.c", hasBaudError);
    const [diagnostic] = diagnostics;
    if (diagnostic === undefined) throw new Error("no diagnostic");
    const actions = await session.codeActions("main.c", diagnostic.range, diagnostics);
    const fix = actions.find(({ isPreferred }) => isPreferred);
    const edits = fix?.edit?.changes?.[session.uri("main.c")] ?? [];
    expect(fix?.kind).toBe("quickfix");
    const document = TextDocument.create("file:///main.c", "c", 1, faultyFirmware["main.c"]);
    expect(TextDocument.applyEdits(document, edits)).toBe(serialSource(rightDivisor));
  });

  test("a finding can be accepted by a note that gives a reason", async () => {
    const session = await sessionOver(faultyFirmware);
    await session.open("main.c", faultyFirmware["main.c"]);
    const diagnostics = await session.diagnostics("main.c", hasBaudError);
    const [diagnostic] = diagnostics;
    if (diagnostic === undefined) throw new Error("no diagnostic");
    const actions = await session.codeActions("main.c", diagnostic.range, diagnostics);
    const allow = actions.find(({ title }) => title.includes("Allow"));
    const edits = allow?.edit?.changes?.[session.uri("main.c")] ?? [];
    const document = TextDocument.create("file:///main.c", "c", 1, faultyFirmware["main.c"]);
    const noted = TextDocument.applyEdits(document, edits);
    expect(noted).toMatch(/@wire allow serial\/baud-error because "[^"]+"/);
    await session.change("main.c", 2, noted);
    await session.diagnostics("main.c", isClean);
  });

  test("directives are completed in a comment, and keys in edgewise.json", async () => {
    const session = await sessionOver(faultyFirmware);
    const source = atCursor(`// @wire bo|\n${serialSource(51)}`);
    await session.open("main.c", source.text);
    const directives = await session.completion("main.c", source.position);
    expect(directives.map(({ label }) => label)).toContain("board");
    const settings = atCursor('{ "board": { "chip": "atmega328p", "|" } }');
    await session.open("edgewise.json", settings.text, "json");
    const keys = await session.completion("edgewise.json", settings.position);
    expect(keys.map(({ label }) => label)).toContain("clock");
  });

  test.each([
    ["asked", { status: true }, ["checking", "ready"]],
    ["did not ask", {}, []],
  ])("its work is told to a client that %s", async (_, options, states) => {
    const session = await sessionOver(faultyFirmware, options);
    await session.diagnostics("main.c", hasBaudError);
    await session.end();
    const told = session.statuses.map((status) => (status as { state: string }).state);
    expect([...new Set(told)]).toEqual(states);
  });

  test("it ends as the protocol says: shutdown, exit, code 0", async () => {
    const session = await sessionOver(faultyFirmware);
    expect(await session.end()).toBe(0);
  });
});
