import { afterAll, beforeAll, expect, test } from "vitest";
import { sampleFiles } from "../server/built/sample-files.ts";
import { EditorSession } from "./host/editor-session.ts";
import { packagedForTests } from "./host/packaged.ts";
import { patience } from "./host/retrying.ts";
import { Workbench } from "./host/workbench.ts";

const packaged = packagedForTests();
let session: EditorSession;
let workbench: Workbench;

beforeAll(async () => {
  session = await EditorSession.open(packaged, sampleFiles("ferry-c-faults", {}), {
    "security.workspace.trust.enabled": false,
  });
  workbench = new Workbench(session.page);
});

afterAll(() => session?.close());

test("the sample's faults are underlined and listed", async () => {
  await workbench.openFile("ps2.c");
  const row = session.page.locator(".markers-panel .monaco-list-row", { hasText: "edgewise" }).first();
  await workbench.runCommand("Problems: Focus on Problems View", row);
  await workbench.selectText("PORTD |= _BV(PS2_DATA)");
  await workbench.errorSquiggles.first().waitFor(patience);
  await workbench.picture("finding");
  expect(await row.isVisible()).toBe(true);
  await session.page.keyboard.press("Control+j");
  await row.waitFor({ state: "hidden", ...patience });
});

test("a hover tells what the hold is for", async () => {
  await workbench.selectText("_delay_us(REQUEST_HOLD_US)");
  const hover = await workbench.hoverOver("REQUEST_HOLD_US", "at least 100 us");
  await workbench.picture("hover");
  expect(await hover.textContent()).toContain("52 us");
});

test("the fix holds the clock long enough", async () => {
  await workbench.applyFix("REQUEST_HOLD_US)", "Hold the clock for 100 us", () => workbench.picture("fix"));
  await workbench.selectText("REQUEST_HOLD_US 100");
  expect(await workbench.lineWith("#define REQUEST_HOLD_US 100").count()).toBe(1);
});

test("the walkthrough opens with its five steps", async () => {
  await workbench.runCommand("Edgewise: Show Me Around", session.page.getByText("Read a hover").first());
  const titles = ["Open the sample", "Read a hover", "See a finding", "Fix it", "Run a movement"];
  for (const title of titles) await session.page.getByText(title, { exact: true }).first().waitFor(patience);
  await workbench.screenshot("walkthrough");
  expect(await session.page.getByText("The First Hour with Edgewise").first().isVisible()).toBe(true);
});

test("a term is picked and explained", async () => {
  await workbench.explainTerm("enable reporting", "0xF4");
  // The page is drawn in a frame within a frame.
  const heading = session.page.frameLocator("iframe.webview").last().frameLocator("iframe").locator("h1");
  await heading.waitFor(patience);
  await workbench.screenshot("explain");
  expect(await heading.textContent()).toContain("0xF4: enable reporting");
});
