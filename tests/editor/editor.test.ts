import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { encoderFirmware, rightMark, unnotedFirmware, wrongMark } from "../server/built/encoder-firmware.ts";
import { faultyFirmware, rightDivisor } from "../server/built/sample-firmware.ts";
import { EditorSession } from "./host/editor-session.ts";
import { packagedForTests } from "./host/packaged.ts";
import { patience } from "./host/retrying.ts";
import { Workbench } from "./host/workbench.ts";

const packaged = packagedForTests();

describe("in a trusted folder", () => {
  let session: EditorSession;
  let workbench: Workbench;

  beforeAll(async () => {
    session = await EditorSession.open(packaged, faultyFirmware, {
      "security.workspace.trust.enabled": false,
    });
    workbench = new Workbench(session.page);
    await workbench.openFile("main.c");
  });

  afterAll(() => session?.close());

  test("the fault is underlined, and the status bar counts it", async () => {
    await workbench.errorSquiggles.first().waitFor(patience);
    await workbench.statusItem.waitFor(patience);
    await session.page.locator(".statusbar-item", { hasText: /Edgewise: 1 error/ }).waitFor(patience);
    await workbench.screenshot("fault");
  });

  test("the underline goes when the fault is typed away, and comes back with it", async () => {
    await workbench.replaceText("= 51", `= ${rightDivisor}`);
    await workbench.errorSquiggles.first().waitFor({ state: "detached", ...patience });
    await workbench.replaceText(`= ${rightDivisor}`, "= 51");
    await workbench.errorSquiggles.first().waitFor(patience);
    expect(await workbench.errorSquiggles.count()).toBeGreaterThan(0);
  });

  test("a hover explains the number", async () => {
    const hover = await workbench.hoverOver("51", "baud");
    await workbench.screenshot("hover");
    expect(await hover.textContent()).toContain("1200");
  });

  test("the quick fix writes the right divisor", async () => {
    await workbench.applyFix("51", String(rightDivisor), () => workbench.screenshot("quick-fix"));
    await workbench.lineWith(`UBRR0 = ${rightDivisor};`).waitFor(patience);
    await workbench.errorSquiggles.first().waitFor({ state: "detached", ...patience });
  });

  test("the rule's name beside the fault leads to its page", async () => {
    await workbench.replaceText(`= ${rightDivisor}`, "= 51");
    await workbench.errorSquiggles.first().waitFor(patience);
    await workbench.followLink("51", "serial/baud-error");
    await session.page.locator('.tab.active[data-resource-name="baud-error.md"]').waitFor(patience);
    await workbench.lineWith("# A line rate that the PC cannot read").waitFor(patience);
    await workbench.screenshot("rule-page");
    await workbench.openFile("main.c");
    await workbench.replaceText("= 51", `= ${rightDivisor}`);
    await workbench.errorSquiggles.first().waitFor({ state: "detached", ...patience });
    expect(await workbench.errorSquiggles.count()).toBe(0);
  });

  test("directives are offered in a comment", async () => {
    await session.page.keyboard.press("Control+End");
    await session.page.keyboard.type("// @wire bo", { delay: 40 });
    await workbench.lineWith("// @wire bo").first().waitFor(patience);
    const offered = await workbench.complete("board");
    await workbench.screenshot("completion");
    expect(await offered.textContent()).toContain("board");
  });

  test("a misspelt key of edgewise.json is underlined", async () => {
    await session.page.keyboard.press("Escape");
    await workbench.openFile("edgewise.json");
    await workbench.replaceText("board", "bord");
    const underlined = session.page.locator(".squiggly-error, .squiggly-warning").first();
    await underlined.waitFor(patience);
    await workbench.screenshot("settings");
    expect(await underlined.isVisible()).toBe(true);
  });
});

describe("in a folder with an encoder", () => {
  let session: EditorSession;

  beforeAll(async () => {
    session = await EditorSession.open(
      packaged,
      { "main.c": encoderFirmware(wrongMark) },
      { "security.workspace.trust.enabled": false },
    );
  });

  afterAll(() => session?.close());

  test("its fault is underlined and counted once it was run, and goes when it is typed away", async () => {
    const workbench = new Workbench(session.page);
    await workbench.openFile("main.c");
    await workbench.errorSquiggles.first().waitFor(patience);
    await session.page.locator(".statusbar-item", { hasText: /Edgewise: 1 error/ }).waitFor(patience);
    await workbench.screenshot("encoder");
    await workbench.replaceText("out[0] = ", `out[0] = ${rightMark}`);
    await workbench.errorSquiggles.first().waitFor({ state: "detached", ...patience });
    expect(await workbench.errorSquiggles.count()).toBe(0);
  });
});

describe("in a folder with an encoder without a note", () => {
  let session: EditorSession;

  beforeAll(async () => {
    session = await EditorSession.open(
      packaged,
      { "main.c": unnotedFirmware() },
      { "security.workspace.trust.enabled": false },
    );
  });

  afterAll(() => session?.close());

  test("its note is offered; taken, it has the fault shown, and undone, the fault goes with it", async () => {
    const workbench = new Workbench(session.page);
    await workbench.openFile("main.c");
    await workbench.takeAction("encode(uint8_t", "Write the note", () => workbench.screenshot("note"));
    await workbench.lineWith("// @wire encodes two-button").waitFor(patience);
    await workbench.errorSquiggles.first().waitFor(patience);
    await session.page.keyboard.press("Control+z");
    await workbench.lineWith("// @wire encodes two-button").waitFor({ state: "detached", ...patience });
    await workbench.errorSquiggles.first().waitFor({ state: "detached", ...patience });
    expect(await workbench.errorSquiggles.count()).toBe(0);
  });
});

describe("in a folder that is not trusted", () => {
  let session: EditorSession;

  beforeAll(async () => {
    session = await EditorSession.open(packaged, faultyFirmware, {
      "security.workspace.trust.enabled": true,
      "security.workspace.trust.startupPrompt": "never",
    });
  });

  afterAll(() => session?.close());

  test("faults are shown all the same, as nothing of the folder is run", async () => {
    const workbench = new Workbench(session.page);
    await session.page.locator(".statusbar-item", { hasText: "Restricted Mode" }).waitFor(patience);
    await workbench.openFile("main.c");
    await workbench.errorSquiggles.first().waitFor(patience);
    await workbench.screenshot("restricted");
    expect(await workbench.errorSquiggles.count()).toBeGreaterThan(0);
    const hover = await workbench.hoverOver("51", "baud");
    expect(await hover.textContent()).toContain("1200");
    expect(session.servers).toHaveLength(1);
    expect(session.startedByServer).toEqual([]);
  });
});
