import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { encoderFirmware, rightMark } from "../server/built/encoder-firmware.ts";
import { EditorSession } from "./host/editor-session.ts";
import { packagedForTests } from "./host/packaged.ts";
import { patience } from "./host/retrying.ts";
import { Workbench } from "./host/workbench.ts";

const packaged = packagedForTests();

describe("above an encoder", () => {
  let session: EditorSession;
  let workbench: Workbench;

  beforeAll(async () => {
    session = await EditorSession.open(
      packaged,
      { "main.c": encoderFirmware(rightMark) },
      { "security.workspace.trust.enabled": true, "security.workspace.trust.startupPrompt": "never" },
    );
    workbench = new Workbench(session.page);
    await workbench.openFile("main.c");
  });

  afterAll(() => session?.close());

  // mouse(4) of the Linux man-pages, table of the three-byte packet: left with dx 12 and dy 5; then dy -1.
  test("a lens shows its bytes, and others after an edit, in restricted mode too", async () => {
    await workbench.lensWith("left pressed: 60 0C 05, as two-button wants").waitFor(patience);
    await workbench.screenshot("lens");
    await workbench.replaceText("0x40 | ", "0x00 | ");
    await workbench.lensWith("left pressed: 20 0C 05, right is 60 0C 05").waitFor(patience);
    await workbench.screenshot("lens-after-edit");
    await workbench.replaceText("0x00 | ", "0x40 | ");
    await workbench.lensWith("left pressed: 60 0C 05, as two-button wants").waitFor(patience);
    expect(await workbench.lensWith("before the edit").count()).toBe(0);
    expect(session.servers).toHaveLength(1);
    expect(session.startedByServer).toEqual([]);
  });

  test("a click on it lets another movement be picked", async () => {
    await workbench.pickFrom(workbench.lensWith("left pressed: 60 0C 05"), "up 1", () =>
      workbench.screenshot("lens-movements"),
    );
    await workbench.lensWith("up 1: 4C 00 3F, as two-button wants").waitFor(patience);
    expect(await workbench.lensWith("60 0C 05").count()).toBe(0);
    await workbench.retrying(async (limit) => {
      await workbench.lensWith("up 1: 4C 00 3F").first().click(limit);
      await session.page
        .locator(".quick-input-list .monaco-list-row.focused", { hasText: "shown now" })
        .filter({ hasText: "up 1" })
        .waitFor(limit);
    });
    await workbench.screenshot("lens-shown-now");
    await session.page.keyboard.press("Escape");
  });

  test("a hover on its name shows the layout as found", async () => {
    const hover = await workbench.hoverOver("encode", "every bit as required");
    await workbench.screenshot("found-layout");
    expect(await hover.textContent()).toContain("y7");
  });

  test("a page of what each line stored is opened", async () => {
    await workbench.retrying(async (limit) => {
      await workbench.lensWith("line by line").click(limit);
      await session.page.locator(".tab.active", { hasText: "line by line" }).waitFor(limit);
    });
    await workbench.screenshot("line-by-line");
    expect(await session.page.locator(".tab.active", { hasText: "line by line" }).count()).toBe(1);
  });
});
