import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { sampleFiles } from "../server/built/sample-files.ts";
import { EditorSession } from "./host/editor-session.ts";
import { packagedForTests } from "./host/packaged.ts";
import { patience } from "./host/retrying.ts";
import { Workbench } from "./host/workbench.ts";

const packaged = packagedForTests();

describe("a run", () => {
  let session: EditorSession;
  let workbench: Workbench;

  beforeAll(async () => {
    session = await EditorSession.open(packaged, sampleFiles("ferry-c", {}), {
      "security.workspace.trust.enabled": false,
    });
    workbench = new Workbench(session.page);
    await workbench.openFile("main.c");
  });

  afterAll(() => session?.close());

  test("stroke, mouse and PC are asked for, and the ribbon opens", async () => {
    await workbench.runCommand("Edgewise: Show a Run", workbench.choice("circle"));
    await workbench.screenshot("choose-run");
    await workbench.choice("circle").click();
    await workbench.choice("plain").click();
    await workbench.choice("rts-toggle").click();
    await workbench.view.locator("h1", { hasText: "stroke circle, mouse plain" }).waitFor(patience);
    await workbench.view.locator("canvas[height]").waitFor(patience);
    await workbench.view.locator("output", { hasText: "edges" }).waitFor(patience);
    expect(await workbench.view.locator(".outcome").textContent()).toBe("passed");
    await workbench.screenshot("ribbon-whole");
  });

  test("a byte is found, and an edge that the code made leads to its line", async () => {
    const { view } = workbench;
    const field = view.getByRole("textbox", { name: "Find a byte" });
    // 0xF4 enables reporting, so that every driver has to send it.
    await field.fill("f4");
    await field.press("Enter");
    await view.locator("output", { hasText: "F4 enable reporting" }).waitFor(patience);
    const ring = view.locator(".ring");
    await ring.waitFor(patience);
    await workbench.screenshot("ribbon-byte");
    const ribbon = view.getByRole("application");
    await ribbon.focus();
    await ribbon.press("ArrowUp");
    const said = view.locator("output");
    await ribbon.press("Shift+ArrowRight");
    for (let steps = 0; steps < 30 && !/ps2\.c:\d+$/.test((await said.textContent()) ?? ""); steps++)
      await ribbon.press("Shift+ArrowRight");
    const [, line] = /ps2\.c:(\d+)$/.exec((await said.textContent()) ?? "") ?? [];
    expect(line).toBeDefined();
    const box = await ring.boundingBox();
    if (box === null) throw new Error("nothing is chosen");
    await session.page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
    await session.page.locator('.tab.active[data-resource-name="ps2.c"]').waitFor(patience);
    await session.page
      .locator(".active-line-number", { hasText: new RegExp(`^${line}$`) })
      .first()
      .waitFor(patience);
    await workbench.screenshot("ribbon-source");
  });

  test("the time between two edges is measured", async () => {
    const { view } = workbench;
    const ribbon = view.getByRole("application");
    await ribbon.focus();
    await ribbon.press("m");
    await ribbon.press("Shift+ArrowRight");
    await ribbon.press("m");
    await view.locator("output", { hasText: / from .* as a period / }).waitFor(patience);
    await workbench.screenshot("ribbon-measure");
    expect(await view.locator("output").textContent()).toMatch(/^[\d.]+ [um]s from /);
  });
});

describe("a matrix", () => {
  let session: EditorSession;

  beforeAll(async () => {
    const few = {
      mice: ["plain", "wheel", "five-button", "answers-late"],
      pcs: ["rts-toggle", "hurried"],
      strokes: ["nudge"],
    };
    session = await EditorSession.open(packaged, sampleFiles("ferry-c-faults", few), {
      "security.workspace.trust.enabled": false,
      "workbench.colorTheme": "Default Light Modern",
    });
  });

  afterAll(() => session?.close());

  test("all cells are run, and a failed one leads to its run", async () => {
    const workbench = new Workbench(session.page);
    await workbench.openFile("main.c");
    const table = workbench.page.locator(".tab.active", { hasText: "Matrix" });
    await workbench.runCommand("Edgewise: Show the Matrix", table);
    await workbench.view.locator("output", { hasText: "All 8 cells" }).waitFor(patience);
    await workbench.screenshot("matrix");
    const failed = workbench.view.locator("td.failed");
    expect(await failed.count()).toBe(8);
    expect(await failed.first().getAttribute("title")).toContain("ps2/request-hold-short");
    await failed.first().getByRole("button").click();
    await workbench.view.locator(".outcome.failed").waitFor(patience);
    await workbench.view.locator("canvas[height]").waitFor(patience);
    await workbench.view.locator("output", { hasText: "edges" }).waitFor(patience);
    await workbench.screenshot("ribbon-failed");
  });
});
