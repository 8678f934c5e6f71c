import { afterAll, beforeAll, expect, test } from "vitest";
import { longFirmware } from "../bench/long-firmware.ts";
import { sampleFiles } from "../server/built/sample-files.ts";
import { EditorSession } from "./host/editor-session.ts";
import { packagedForTests } from "./host/packaged.ts";
import { patience } from "./host/retrying.ts";
import { Workbench } from "./host/workbench.ts";

const packaged = packagedForTests();
let session: EditorSession;
let workbench: Workbench;

const text = longFirmware("sample-workspace/ferry-c", 10_000);

beforeAll(async () => {
  const settings = sampleFiles("ferry-c", {})["edgewise.json"] ?? "";
  session = await EditorSession.open(
    packaged,
    { "edgewise.json": settings, "long.c": text },
    { "security.workspace.trust.enabled": false },
  );
  workbench = new Workbench(session.page);
  await workbench.openFile("long.c");
});

afterAll(() => session?.close());

test("ten thousand lines are checked, and a fault among them is underlined as it is typed", async () => {
  expect(text.split("\n").length).toBeGreaterThanOrEqual(10_000);
  await workbench.status(/Edgewise/).waitFor(patience);
  await workbench.selectText("_delay_us(120)");
  expect(await workbench.errorSquiggles.count()).toBe(0);
  await workbench.replaceText("_delay_us(120)", "_delay_us(52)");
  await workbench.errorSquiggles.first().waitFor(patience);
  // The host's request to send holds the clock for at least 100 us: the hover names its document.
  const hover = await workbench.hoverOver("52", "100 us");
  await workbench.screenshot("large-file");
  expect(await hover.textContent()).toContain("52 us");
});

test("what is typed appears, and hovers, completion and findings answer meanwhile", async () => {
  await session.page.keyboard.press("Control+End");
  for (const line of ["static uint8_t ferry_count;", "void count_ferry(void) { ferry_count++; }"]) {
    await session.page.keyboard.type(`\n${line}`, { delay: 20 });
    await workbench.lineWith(line).first().waitFor(patience);
  }
  await session.page.keyboard.type("\n// @wire serial report=", { delay: 20 });
  const offered = await workbench.complete("five-byte");
  await workbench.screenshot("large-file-typed");
  expect(await offered.textContent()).toContain("five-byte");
  await session.page.keyboard.press("Escape");
  await workbench.replaceText("_delay_us(52)", "_delay_us(120)");
  await workbench.errorSquiggles.first().waitFor({ state: "detached", ...patience });
  await workbench.hoverOver("120", "100 us");
});

test("how long the extension took to be activated is printed", async () => {
  // The list begins with the slowest, and rows out of sight are not in the page.
  await session.page.setViewportSize({ width: 1280, height: 2400 });
  const rows = session.page.locator(".runtime-extensions-editor .extension");
  const own = rows.filter({ has: session.page.getByText("Edgewise", { exact: true }) });
  await workbench.runCommand("Developer: Show Running Extensions", own);
  await own.locator(".activation-time").waitFor(patience);
  await workbench.screenshot("activation");
  // Those of the editor tell how busy the machine is.
  const others = (await rows.all()).map(async (row) => {
    const words = [row.locator(".name"), row.locator(".activation-time")].map((part) => part.textContent());
    return (await Promise.all(words)).join(": ");
  });
  process.stdout.write(
    `Starts of extensions, as the editor tells them:\n${(await Promise.all(others)).join("\n")}\n`,
  );
  expect(await own.locator(".activation-time").textContent()).toMatch(/\d+ms/);
});
