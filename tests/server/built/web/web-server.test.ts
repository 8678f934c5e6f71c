import { describe, expect, test } from "vitest";
import type { CodeLens, Diagnostic } from "vscode-languageserver/node";
import type { CellVerdict } from "../../../../server/language-server/client-messages/matrix.ts";
import type {
  Firmware,
  PanelAnswer,
  RunAnswer,
} from "../../../../server/language-server/client-messages/runs.ts";
import { encoderFirmware, rightMark, slowFirmware, wrongMark } from "../encoder-firmware.ts";
import { sampleFiles } from "../sample-files.ts";
import { faultyFirmware, rightDivisor, serialSource } from "../sample-firmware.ts";
import { webSessionOver } from "./web-session.ts";

const isClean = (diagnostics: readonly Diagnostic[]) => diagnostics.length === 0;
const has = (rule: string) => (diagnostics: readonly Diagnostic[]) =>
  diagnostics.some(({ code }) => code === rule);

describe("the bundle for web workers", () => {
  test("tells faults, explains, completes and mends over unsaved buffers", async () => {
    const { session, faults } = await webSessionOver(faultyFirmware);
    await session.open("main.c", faultyFirmware["main.c"]);
    const found = await session.diagnostics("main.c", has("serial/baud-error"));
    const [fault] = found;
    if (fault === undefined) throw new Error("no fault");
    expect(fault.codeDescription?.href).toBe(
      "https://extensions.test/edgewise/docs/rules/serial/baud-error.md",
    );
    const hover = await session.hover("main.c", fault.range.start);
    expect(JSON.stringify(hover?.contents)).toContain("1200");
    const [fix] = await session.codeActions("main.c", fault.range, found);
    const edits = fix?.edit?.changes?.[session.uri("main.c")] ?? [];
    expect(edits.map(({ newText }) => newText)).toEqual([String(rightDivisor)]);
    await session.change("main.c", 2, serialSource(rightDivisor));
    await session.diagnostics("main.c", isClean);
    await session.change("main.c", 3, `// @wire en\n${serialSource(rightDivisor)}`);
    const items = await session.completion("main.c", { line: 0, character: "// @wire en".length });
    expect(items.map(({ label }) => label)).toContain("encodes");
    expect(faults).toEqual([]);
  });

  // mouse(4) of the Linux man-pages, table of the three-byte packet: left with dx 12 and dy 5.
  test("tries encoders in a worker of its own, and shows above them what came", async () => {
    const { session } = await webSessionOver({ "main.c": encoderFirmware(wrongMark) });
    await session.open("main.c", encoderFirmware(wrongMark));
    await session.diagnostics("main.c", has("report/sync-bit"));
    await session.change("main.c", 2, encoderFirmware(rightMark));
    const textDocument = { uri: session.uri("main.c") };
    for (;;) {
      const refreshed = session.refreshed();
      const lenses = await session.request<readonly CodeLens[]>("textDocument/codeLens", { textDocument });
      const titles = lenses.map(({ command }) => command?.title);
      if (titles.some((title) => title?.endsWith("left pressed: 60 0C 05, as two-button wants"))) break;
      await refreshed;
    }
    await session.diagnostics("main.c", isClean);
  });

  test.each([
    { page: "that is not isolated, without shared memory", isIsolated: false },
    { page: "that is isolated, through shared memory", isIsolated: true },
  ])("an edit ends a long trial in a page $page, and requests are answered", async ({ isIsolated }) => {
    const slow = slowFirmware(wrongMark);
    const { session } = await webSessionOver({ "main.c": slow }, { isIsolated });
    await session.open("main.c", slow);
    await session.status((status) => (status as { state: string }).state === "ready");
    const hover = await session.hover("main.c", { line: 0, character: "// @wire bo".length });
    expect(JSON.stringify(hover?.contents)).toContain("board");
    await session.change("main.c", 2, encoderFirmware(wrongMark));
    await session.diagnostics("main.c", has("report/sync-bit"));
    await session.change("main.c", 3, encoderFirmware(rightMark));
    await session.diagnostics("main.c", isClean);
    expect(session.log).toEqual([]);
  });

  test("runs a firmware and its matrix in workers", async () => {
    const few = { mice: ["plain", "wheel"], pcs: ["rts-toggle"], strokes: ["nudge"] };
    // Folders of a browser may have addresses that look like the disk's.
    const root = "file:///picked";
    const { session } = await webSessionOver(sampleFiles("ferry-c", few), { root });
    const [firmware] = await session.request<readonly Firmware[]>("edgewise/firmwares", {});
    const project = firmware?.project;
    const choice = { project, stroke: "nudge", mouse: "plain", pc: "rts-toggle" };
    const answer = await session.request<RunAnswer>("edgewise/run", choice);
    if (answer.kind !== "run") throw new Error(answer.message);
    // mouse(4): after RTS was dropped and raised, the mouse sends 0x4D.
    expect(answer.overview.bytes.some(({ byte, lane }) => lane === "pc" && byte === 0x4d)).toBe(true);
    const panel = await session.request<PanelAnswer>("edgewise/runPanel", {
      run: answer.run,
      columns: 100,
      from: 0,
      to: answer.overview.ended,
    });
    if (panel.kind !== "panel") throw new Error(panel.message);
    expect(panel.panel.lanes.map(({ id }) => id)).toEqual(["mouse", "code", "pc"]);
    const cells: CellVerdict[] = [];
    session.onCell = (_, cell) => cells.push(cell);
    await session.request("edgewise/matrixRun", { project, matrix: 1 });
    expect(cells.map(({ mouse, verdict }) => `${mouse} ${verdict}`).sort()).toEqual([
      "plain passed",
      "wheel passed",
    ]);
  });

  test("explains any term", async () => {
    const { session } = await webSessionOver({});
    const answer = await session.request<{ markdown: string }>("edgewise/explain", { term: "0xF4" });
    expect(answer.markdown).toContain("enable reporting");
  });
});
