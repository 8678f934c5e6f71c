import { expect, test } from "vitest";
import type { InlayHint } from "vscode-languageserver";
import { faultyFirmware } from "../sample-firmware.ts";
import { sessionOver } from "./sessions.ts";

test("hints come once the settings ask for them", async () => {
  const session = await sessionOver(faultyFirmware);
  await session.open("main.c", faultyFirmware["main.c"] ?? "");
  const ask = () =>
    session.request<readonly InlayHint[]>("textDocument/inlayHint", {
      textDocument: { uri: session.uri("main.c") },
      range: { start: { line: 0, character: 0 }, end: { line: 1000, character: 0 } },
    });
  expect(await ask()).toEqual([]);
  session.notify("workspace/didChangeConfiguration", { settings: { edgewise: { inlayHints: true } } });
  // ATmega328P datasheet, Table 19-1: 16 MHz / (16 (51 + 1)) baud.
  expect((await ask()).map(({ label }) => label)).toEqual(["19230.8 baud"]);
});
