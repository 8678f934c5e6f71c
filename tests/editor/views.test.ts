import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { sampleFiles } from "../server/built/sample-files.ts";
import { faintTexts } from "./host/contrast.ts";
import { EditorSession } from "./host/editor-session.ts";
import { packagedForTests } from "./host/packaged.ts";
import { patience } from "./host/retrying.ts";
import { Workbench } from "./host/workbench.ts";

const packaged = packagedForTests();

/** Names for pictures, of themes, and of the class that the editor gives pages then. */
const themes = [
  ["dark", "Default Dark Modern", "vscode-dark"],
  ["light", "Default Light Modern", "vscode-light"],
  ["high-contrast", "Default High Contrast", "vscode-high-contrast"],
  ["high-contrast-light", "Default High Contrast Light", "vscode-high-contrast-light"],
] as const;

/** Looks at the ribbon and the matrix that are open, in a theme. */
async function readIn(
  [name, theme, kind]: readonly [name: string, theme: string, kind: string],
  session: EditorSession,
  [ribbon, matrix]: readonly [string, string],
): Promise<void> {
  const workbench = new Workbench(session.page);
  session.write(".vscode/settings.json", JSON.stringify({ "workbench.colorTheme": theme }));
  const tabs = [
    [/^Run: /, ribbon],
    [/^Matrix: /, matrix],
  ] as const;
  for (const [tab, picture] of tabs) {
    await session.page.locator(".tab", { hasText: tab }).click();
    await workbench.view.locator(`body.${kind}`).waitFor(patience);
    await workbench.screenshot(`${picture}-${name}`);
    expect(await faintTexts(workbench.view.locator("main"))).toEqual([]);
  }
}

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
    await workbench.showRun(["circle", "plain", "rts-toggle"], () => workbench.screenshot("choose-run"));
    await workbench.view.locator("h1", { hasText: "stroke circle, mouse plain" }).waitFor(patience);
    await workbench.view.locator("canvas[height]").waitFor(patience);
    await workbench.view.locator("output", { hasText: "edges" }).waitFor(patience);
    expect(await workbench.view.locator(".outcome").textContent()).toBe("passed");
    await workbench.picture("ribbon");
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

  test("every control has a name, and what is done by key is told", async () => {
    const { view } = workbench;
    const tree = await view.locator("main").ariaSnapshot();
    expect(namelessIn(tree)).toEqual([]);
    for (const control of [
      'button "Closer"',
      'textbox "Find a byte',
      'button "Save SVG..."',
      'application "Wires',
    ])
      expect(tree).toContain(control);
    const said = view.getByRole("status");
    expect(await said.getAttribute("aria-live")).toBe("polite");
    const ribbon = view.getByRole("application");
    await ribbon.focus();
    for (const key of ["0", "+", "ArrowRight", "End", "-"]) {
      const before = await said.textContent();
      await ribbon.press(key);
      await expect.poll(() => said.textContent(), patience).not.toBe(before);
      expect(await said.textContent()).toMatch(/^In sight: [\d.]+ ms to [\d.]+ ms/);
    }
  });

  test("what is in sight is saved as a picture, and the run as waveforms", async () => {
    await workbench.view.getByRole("application").press("0");
    await workbench.saveWith(workbench.view.getByRole("button", { name: "Save SVG..." }), "run.svg");
    const svg = () => session.read("run.svg");
    await expect.poll(svg, patience).toMatch(/<\/svg>\s*$/);
    expect(svg()).toContain("stroke circle, mouse plain, PC rts-toggle");
    await workbench.pictureOf(svg(), "saved-run");
    await workbench.saveWith(workbench.view.getByRole("button", { name: "Save VCD..." }), "run.vcd");
    const vcd = () => session.read("run.vcd");
    // IEEE 1364-2001, 18.2: declarations end with this word, changes follow.
    await expect.poll(vcd, patience).toMatch(/\$enddefinitions \$end[\s\S]*#\d+\n[\s\S]*#\d+/);
    expect(vcd()).toMatch(/\$var wire 1 \S clock \$end/);
  });

  test("that sources were edited since is said, and it is run again where it is shown", async () => {
    const { view } = workbench;
    const edited = view.getByText("main.c was edited since.");
    session.write("main.c", `// At the quay.\n${session.read("main.c")}`);
    await edited.waitFor(patience);
    await workbench.screenshot("ribbon-edited");
    await view.getByRole("button", { name: "Run Again" }).click(patience);
    await edited.waitFor({ state: "hidden", ...patience });
    await view.locator("canvas[height]").waitFor(patience);
    expect(await session.page.locator(".tab", { hasText: /^Run: / }).count()).toBe(1);
    expect(await view.getByRole("button", { name: "Run Again" }).isVisible()).toBe(false);
  });
});

describe("when the server is killed", () => {
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

  async function showRun(stroke: string): Promise<void> {
    await workbench.showRun([stroke, "plain", "rts-toggle"]);
    await workbench.view.locator("h1", { hasText: `stroke ${stroke}` }).waitFor(patience);
    await workbench.view.locator("canvas[height]").waitFor(patience);
  }

  test("a matrix keeps the cells that it has, and says why there are no more", async () => {
    await showRun("nudge");
    await workbench.showMatrix();
    const done = workbench.view.locator("td.passed");
    await done.first().waitFor(patience);
    await session.killServer();
    const { view } = workbench;
    await view.locator("output", { hasText: "; the checker ended" }).waitFor(patience);
    await workbench.screenshot("matrix-lost");
    expect(await done.count()).toBeGreaterThan(0);
    await view.getByRole("button", { name: "Run Again" }).click(patience);
    await view.locator("output", { hasText: /^\d+ of \d+ cells: \d+ passed$/ }).waitFor(patience);
    await view.getByRole("button", { name: "Cancel" }).click(patience);
    await view.locator("output", { hasText: "; cancelled" }).waitFor(patience);
  });

  test("a run that the server held is not taken for one that its successor holds", async () => {
    await showRun("circle");
    await session.page.locator(".tab", { hasText: "Run: nudge" }).click();
    const { view } = workbench;
    await view.locator("h1", { hasText: "stroke nudge" }).waitFor(patience);
    const ribbon = view.getByRole("application");
    for (let times = 0; times < 4; times++) await ribbon.press("+");
    await view.getByRole("alert").filter({ hasText: "does not hold this run any more" }).waitFor(patience);
    await workbench.screenshot("ribbon-lost");
    expect(await view.locator("h1").textContent()).toContain("stroke nudge");
  });
});

describe("by keyboard alone", () => {
  let session: EditorSession;
  let workbench: Workbench;

  beforeAll(async () => {
    session = await EditorSession.open(packaged, sampleFiles("ferry-c", {}), {
      "security.workspace.trust.enabled": false,
    });
    workbench = new Workbench(session.page);
    await workbench.status(/Edgewise/).waitFor(patience);
  });

  afterAll(() => session?.close());

  const press = (key: string) => session.page.keyboard.press(key);
  const focused = () => workbench.view.locator(":focus");

  async function pick(...rows: readonly string[]): Promise<void> {
    for (const row of rows) {
      await workbench.choice(row).waitFor(patience);
      await session.page.keyboard.type(row);
      await session.page
        .locator(".quick-input-list .monaco-list-row.focused", { hasText: row })
        .waitFor(patience);
      await press("Enter");
    }
  }

  test("a run is chosen, looked at and saved", async () => {
    await workbench.commandByKey("Edgewise: Show a Run");
    await pick("circle", "plain", "rts-toggle");
    const ribbon = workbench.view.locator("canvas:focus");
    await ribbon.waitFor(patience);
    const said = workbench.view.getByRole("status");
    await said.filter({ hasText: "edges in" }).waitFor(patience);
    await press("+");
    await said.filter({ hasText: "In sight" }).waitFor(patience);
    await press("Shift+ArrowRight");
    await said.filter({ hasText: /^clock / }).waitFor(patience);
    await press("/");
    await expect.poll(() => focused().getAttribute("aria-label"), patience).toMatch(/^Find a byte/);
    await session.page.keyboard.type("f4");
    await press("Enter");
    await said.filter({ hasText: "F4 enable reporting" }).waitFor(patience);
    await workbench.screenshot("keyboard-ribbon");
    // Back to the ribbon, and from there backwards through the tools.
    await press("Escape");
    await ribbon.waitFor(patience);
    const names: string[] = [];
    for (let steps = 0; steps < 2; steps++) {
      await press("Shift+Tab");
      names.push((await focused().textContent()) ?? "");
    }
    expect(names).toEqual(["Save VCD...", "Save SVG..."]);
    await press("Enter");
    await workbench.confirmPath("run.svg");
    await expect.poll(() => session.read("run.svg"), patience).toMatch(/<\/svg>\s*$/);
  });

  test("a matrix is shown and cancelled; what is done stays, and is said to be so", async () => {
    await workbench.commandByKey("Edgewise: Show the Matrix");
    const { view } = workbench;
    const done = view.locator("td:is(.passed, .failed, .not-run)");
    await view.locator("h1:focus").waitFor(patience);
    await done.nth(1).waitFor(patience);
    expect(namelessIn(await view.locator("main").ariaSnapshot())).toEqual([]);
    await workbench.screenshot("matrix-running");
    await press("Tab");
    expect(await focused().textContent()).toBe("Cancel");
    await press("Enter");
    const said = view.locator("output", { hasText: /^\d+ of \d+ cells: .*; cancelled$/ });
    await said.waitFor(patience);
    await view.getByRole("status").filter({ hasText: "; cancelled" }).first().waitFor(patience);
    await workbench.screenshot("matrix-cancelled");
    const [, run, all] = /^(\d+) of (\d+) cells/.exec((await said.textContent()) ?? "") ?? [];
    expect(await done.count()).toBe(Number(run));
    expect(Number(run)).toBeLessThan(Number(all));
    expect(await view.getByRole("button", { name: "Cancel" }).isVisible()).toBe(false);
    expect(await focused().getAttribute("aria-label")).toBe("Cells");
  });

  test.each(themes)("in %s colours all texts can be read", async (...theme) => {
    await readIn(theme, session, ["ribbon-passed", "matrix-cancelled"]);
  });

  test("a run of a hundred thousand edges is moved through; how smoothly is printed", async () => {
    const settings: object = JSON.parse(session.read("edgewise.json"));
    const there = { ms: 1000, right: 600, down: -400 };
    const back = { ms: 1000, right: -600, down: 400 };
    const crossing = Array.from({ length: 28 }, (_, step) => (step % 2 === 0 ? there : back));
    session.write("edgewise.json", JSON.stringify({ ...settings, simulate: { ownStrokes: { crossing } } }));
    await workbench.showRun(["crossing", "plain", "rts-toggle"]);
    const { view } = workbench;
    const said = view.getByRole("status").filter({ hasText: /^\d+ edges in/ });
    await said.waitFor(patience);
    expect(Number.parseInt((await said.textContent()) ?? "", 10)).toBeGreaterThanOrEqual(100_000);
    await view.locator("canvas[height]").waitFor(patience);
    const frames = await workbench.framesWhilePanning(view.locator("canvas"));
    await workbench.screenshot("ribbon-long");
    process.stdout.write(`Moving through a run of ${await said.textContent()}: ${framesInWords(frames)}\n`);
    expect(frames.length).toBeGreaterThan(10);
  });
});

/** Lines of an accessibility tree with a control or a picture that has no name. */
function namelessIn(tree: string): readonly string[] {
  const named = "button|textbox|application|progressbar|table|img|group|region|search|link";
  return tree
    .split("\n")
    .filter((line) => new RegExp(`^\\s*- (${named})(?! ")`).test(line) && !/- search/.test(line));
}

/** Milliseconds from each picture to the next. */
function framesInWords(frames: readonly number[]): string {
  const sorted = [...frames].sort((a, b) => a - b);
  const at = (share: number) => (sorted[Math.floor(share * (sorted.length - 1))] ?? 0).toFixed(1);
  return `${frames.length} frames, ${at(0.5)} ms apart as the median, ${at(0.95)} ms for 19 of 20, ${at(1)} ms at most`;
}

describe("a matrix", () => {
  let session: EditorSession;

  beforeAll(async () => {
    const few = {
      mice: ["plain", "wheel", "five-button", "slow-to-start", "answers-at-once", "answers-late"],
      pcs: ["rts-toggle", "hurried", "patient"],
      strokes: ["nudge"],
    };
    const files = sampleFiles("ferry-c", few);
    const impatient = {
      "ps2.c": (files["ps2.c"] ?? "").replace("REPLY_TIMEOUT_MS 30", "REPLY_TIMEOUT_MS 5"),
    };
    session = await EditorSession.open(
      packaged,
      { ...files, ...impatient },
      {
        "security.workspace.trust.enabled": false,
        "workbench.colorTheme": "Default Light Modern",
      },
    );
  });

  afterAll(() => session?.close());

  test("all cells are run, and a failed one leads to its run", async () => {
    const workbench = new Workbench(session.page);
    await workbench.openFile("main.c");
    await workbench.showMatrix();
    await workbench.view
      .locator("output", { hasText: "All 18 cells: 15 passed, 3 failed" })
      .waitFor(patience);
    await workbench.picture("matrix");
    // Mice may take 25 ms to answer, and this one does.
    const failed = workbench.view.locator("tr", { hasText: "answers-late" }).locator("td.failed");
    expect(await failed.count()).toBe(3);
    expect(await failed.first().getAttribute("title")).toContain("ps2/reply-timeout-short");
    await failed.first().getByRole("button").click();
    await workbench.view.locator(".outcome.failed").waitFor(patience);
    await workbench.view.locator("canvas[height]").waitFor(patience);
    await workbench.view.locator("output", { hasText: "edges" }).waitFor(patience);
    await workbench.screenshot("ribbon-failed");
  });

  test.each(themes)("in %s colours all texts of what failed can be read", async (...theme) => {
    await readIn(theme, session, ["ribbon-failed", "matrix-failed"]);
  });

  test("is run again, of the sources as they are then, where it is shown already", async () => {
    const workbench = new Workbench(session.page);
    const tabs = session.page.locator(".tab", { hasText: /^Matrix: / });
    const said = (text: string) => workbench.view.locator("output", { hasText: text });
    await workbench.openFile("ps2.c");
    await workbench.replaceText("REPLY_TIMEOUT_MS 5", "REPLY_TIMEOUT_MS 30");
    await tabs.click(patience);
    await workbench.view.getByText("ps2.c was edited since.").waitFor(patience);
    await workbench.view.getByRole("button", { name: "Run Again" }).click(patience);
    await said("All 18 cells: 18 passed").waitFor(patience);
    await workbench.screenshot("matrix-again");
    await workbench.openFile("ps2.c");
    await workbench.replaceText("REPLY_TIMEOUT_MS 30", "REPLY_TIMEOUT_MS 5");
    await workbench.showMatrix();
    await said("All 18 cells: 15 passed, 3 failed").waitFor(patience);
    expect(await tabs.count()).toBe(1);
  });
});
