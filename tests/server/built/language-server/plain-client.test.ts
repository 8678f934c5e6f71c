import { afterEach, expect, test } from "vitest";
import type { CodeLens, Hover, InitializeResult } from "vscode-languageserver/node";
import { encoderFirmware, rightMark } from "../encoder-firmware.ts";
import { faultyFirmware } from "../sample-firmware.ts";
import { ScratchFolder } from "../scratch-folder.ts";
import { Session } from "./session.ts";

let session: Session | undefined;

afterEach(() => {
  session?.kill();
  session?.folder.remove();
});

// Language Server Protocol 3.17: every capability of a client is optional, and so are `workspaceFolders` and `initializationOptions`.
test("a client that declares nothing and knows no message of ours gets diagnostics, hovers and lenses", async () => {
  const report = encoderFirmware(rightMark);
  const client = new Session(new ScratchFolder({ ...faultyFirmware, "report.c": report }));
  session = client;
  const { capabilities } = await client.request<InitializeResult>("initialize", {
    processId: null,
    rootUri: client.uri(""),
    capabilities: {},
  });
  expect(capabilities).toMatchObject({ hoverProvider: true, codeLensProvider: {} });
  await client.notify("initialized", {});
  await client.open("main.c", faultyFirmware["main.c"]);
  await client.open("report.c", report);
  // UBRR0 = 51 makes 19231 baud: ATmega328P datasheet, baud rate equations at 16 MHz.
  const [fault] = await client.diagnostics("main.c", (all) => all.length > 0);
  expect(fault).toMatchObject({ code: "serial/baud-error", source: "edgewise" });
  const hover: Hover | null = await client.hover("main.c", fault?.range.start ?? { line: 0, character: 0 });
  expect(JSON.stringify(hover?.contents)).toContain("1200");
  const lenses = () =>
    client.request<readonly CodeLens[]>("textDocument/codeLens", {
      textDocument: { uri: client.uri("report.c") },
    });
  // mouse(4) of the Linux man-pages, table of the three-byte packet: left with dx 12 and dy 5.
  const told = { title: "right 12 down 5, left pressed: 60 0C 05, as two-button wants", command: "" };
  await expect
    .poll(async () => (await lenses()).map(({ command }) => command), { timeout: 50_000 })
    .toEqual([told]);
  // What only an extension of the protocol could tell is not sent.
  expect(client.statuses).toEqual([]);
});
