import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { encoderFirmware, rightMark } from "../server/built/encoder-firmware.ts";
import { sampleFiles } from "../server/built/sample-files.ts";
import { faultyFirmware, rightDivisor } from "../server/built/sample-firmware.ts";
import { EditorSession } from "./host/editor-session.ts";
import { packagedForTests } from "./host/packaged.ts";
import { patience } from "./host/retrying.ts";
import { Workbench } from "./host/workbench.ts";

const packaged = packagedForTests();

/** The extension runs in the browser, in its worker for extensions. */
const inBrowser = {
  "security.workspace.trust.enabled": false,
  "remote.extensionKind": { "edgewise.edgewise": ["web"] },
};

/** The server is a worker of the browser's worker for extensions, and no process. */
async function expectServerInBrowser(session: EditorSession): Promise<void> {
  expect(await session.workers()).toContainEqual(
    expect.stringMatching(/ExtensionHostWorker.*edgewise server/),
  );
  expect(session.servers).toEqual([]);
}

describe("a fault in a browser", () => {
  let session: EditorSession;
  let workbench: Workbench;

  beforeAll(async () => {
    session = await EditorSession.open(packaged, faultyFirmware, inBrowser);
    workbench = new Workbench(session.page);
    await workbench.openFile("main.c");
  });

  afterAll(() => session?.close());

  test("it is underlined by a server that is a worker", async () => {
    await workbench.errorSquiggles.first().waitFor(patience);
    await session.page.locator(".statusbar-item", { hasText: /Edgewise: 1 error/ }).waitFor(patience);
    await workbench.screenshot("web-fault");
    await expectServerInBrowser(session);
  });

  test("a hover explains the number", async () => {
    const hover = await workbench.hoverOver("51", "baud");
    await workbench.screenshot("web-hover");
    expect(await hover.textContent()).toContain("1200");
  });

  test("the underline goes with the fix, and comes back while one types", async () => {
    await workbench.applyFix("51", String(rightDivisor), () => workbench.screenshot("web-fix"));
    await workbench.lineWith(`UBRR0 = ${rightDivisor};`).waitFor(patience);
    await workbench.errorSquiggles.first().waitFor({ state: "detached", ...patience });
    await workbench.replaceText(`= ${rightDivisor}`, "= 51");
    await workbench.errorSquiggles.first().waitFor(patience);
    await workbench.screenshot("web-typed");
    expect(await workbench.errorSquiggles.count()).toBeGreaterThan(0);
  });

  // ATmega328P datasheet, Table 19-1: 16 MHz / (16 (51 + 1)) baud.
  test("words stand behind numbers once the settings ask for them", async () => {
    session.write(".vscode/settings.json", JSON.stringify({ "edgewise.inlayHints": true }));
    await workbench.lineWith("19230.8 baud").first().waitFor(patience);
    await workbench.screenshot("web-inlay-hint");
    expect(await workbench.lineWith("19230.8 baud").count()).toBe(1);
  });

  test("the rule's name beside the fault leads to its page", async () => {
    await workbench.followLink("51", "serial/baud-error");
    await workbench.lineWith("# A line rate that the PC cannot read").waitFor(patience);
    await workbench.screenshot("web-rule-page");
    expect(await session.page.locator(".tab.active", { hasText: "baud-error.md" }).count()).toBe(1);
  });
});

describe("an encoder in a browser, in a folder that is not trusted", () => {
  let session: EditorSession;
  let workbench: Workbench;

  beforeAll(async () => {
    const files = { "main.c": encoderFirmware(rightMark) };
    session = await EditorSession.open(packaged, files, {
      ...inBrowser,
      "security.workspace.trust.enabled": true,
      "security.workspace.trust.startupPrompt": "never",
    });
    workbench = new Workbench(session.page);
    await workbench.openFile("main.c");
  });

  afterAll(() => session?.close());

  // mouse(4) of the Linux man-pages, table of the three-byte packet: left with dx 12 and dy 5.
  test("a lens shows its bytes, others after an edit, and the first again, from a worker beside the server's", async () => {
    await workbench.lensWith("left pressed: 60 0C 05, as two-button wants").waitFor(patience);
    expect(await session.workers()).toContainEqual(expect.stringMatching(/edgewise trials/));
    await workbench.screenshot("web-lens");
    await workbench.replaceText("0x40 | ", "0x00 | ");
    await workbench.lensWith("left pressed: 20 0C 05, right is 60 0C 05").waitFor(patience);
    await workbench.screenshot("web-lens-after-edit");
    await workbench.replaceText("0x00 | ", "0x40 | ");
    await workbench.lensWith("left pressed: 60 0C 05, as two-button wants").waitFor(patience);
    await expectServerInBrowser(session);
  });

  test("a note is completed", async () => {
    await workbench.selectText("#include <stdint.h>");
    await session.page.keyboard.press("Home");
    await session.page.keyboard.type("// @wire ");
    const offered = await workbench.complete("encodes");
    await workbench.screenshot("web-completion");
    expect(await offered.isVisible()).toBe(true);
  });
});

describe("a whole firmware in a browser", () => {
  let session: EditorSession;
  let workbench: Workbench;

  beforeAll(async () => {
    const few = { mice: ["plain", "wheel"], pcs: ["rts-toggle"], strokes: ["nudge", "circle"] };
    session = await EditorSession.open(packaged, sampleFiles("ferry-c", few), inBrowser);
    workbench = new Workbench(session.page);
    await workbench.openFile("main.c");
  });

  afterAll(() => session?.close());

  test("the ribbon of a run opens", async () => {
    await workbench.showRun(["circle", "plain", "rts-toggle"]);
    await workbench.view.locator("h1", { hasText: "stroke circle, mouse plain" }).waitFor(patience);
    await workbench.view.locator("canvas[height]").waitFor(patience);
    await workbench.view.locator("output", { hasText: "edges" }).waitFor(patience);
    await workbench.screenshot("web-ribbon");
    expect(await workbench.view.locator(".outcome").textContent()).toBe("passed");
    expect(await session.workers()).toContainEqual(expect.stringMatching(/edgewise runs/));
  });

  test("the matrix fills", async () => {
    await workbench.openFile("main.c");
    await workbench.showMatrix();
    await workbench.view.locator("output", { hasText: "All 2 cells" }).waitFor(patience);
    await workbench.screenshot("web-matrix");
    expect(await workbench.view.locator("td.failed").count()).toBe(0);
    await expectServerInBrowser(session);
  });

  test("a term is explained, and the log opens", async () => {
    await workbench.explainTerm("enable reporting", "0xF4");
    await workbench.view.locator("h1", { hasText: "0xF4: enable reporting" }).waitFor(patience);
    await workbench.screenshot("web-explain");
    const log = session.page.locator(".panel .action-item.checked", { hasText: "Output" });
    await workbench.runCommand("Edgewise: Show Log", log);
    await workbench.screenshot("web-log");
    const channel = session.page.locator(".panel select option:checked").first();
    expect(await channel.textContent()).toBe("Edgewise");
  });

  test("the walkthrough opens, and a copy of the sample is put into a folder and opened", async () => {
    await workbench.runCommand("Edgewise: Show Me Around", session.page.getByText("Read a hover").first());
    await workbench.screenshot("web-walkthrough");
    const dialog = session.page.locator(".quick-input-widget", { hasText: "a copy of the sample workspace" });
    await workbench.runCommand("Edgewise: Open a Copy of the Sample Workspace...", dialog);
    await dialog.locator("input").first().fill(`${session.folder}/`);
    await dialog.locator(".monaco-button", { hasText: "Put the Sample Here" }).click();
    await session.page
      .locator(".explorer-folders-view .monaco-list-row", { hasText: "ferry-c-faults" })
      .waitFor(patience);
    await workbench.screenshot("web-sample");
    expect(await session.page.title()).toContain("sample-workspace");
  });
});
