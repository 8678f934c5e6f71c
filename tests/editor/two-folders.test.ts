import { afterAll, beforeAll, expect, test } from "vitest";
import { sampleFiles } from "../server/built/sample-files.ts";
import { EditorSession } from "./host/editor-session.ts";
import { packagedForTests } from "./host/packaged.ts";
import { patience } from "./host/retrying.ts";
import { Workbench } from "./host/workbench.ts";

const packaged = packagedForTests();
let session: EditorSession;
let workbench: Workbench;

/** The sample's firmware in a folder of its own, its files named after the folder. */
function firmwareIn(folder: string, change: (text: string) => string): Record<string, string> {
  const settings = { strokes: ["nudge"], mice: ["plain"], pcs: ["rts-toggle", "patient"] };
  return Object.fromEntries(
    Object.entries(sampleFiles("ferry-c", settings)).map(([name, text]) => [
      `${folder}/${name.replace(/(\w+)\.c$/, `${folder}_$1.c`)}`,
      change(text),
    ]),
  );
}

const ferry = firmwareIn("ferry", (text) => text);
// A line rate far from 1200: ATmega328P datasheet, baud rate equations, U2X0 = 0.
const quay = firmwareIn("quay", (text) => text.replace("UBRR0 = DIVISOR", "UBRR0 = 51"));
const both = ["ferry", "quay"];

const folders = (names: readonly string[]) => JSON.stringify({ folders: names.map((path) => ({ path })) });

beforeAll(async () => {
  session = await EditorSession.open(
    packaged,
    { ...ferry, ...quay },
    { "security.workspace.trust.enabled": false },
    { folders: both },
  );
  workbench = new Workbench(session.page);
  await workbench.goToFile("quay_serial.c");
});

afterAll(() => session?.close());

/** Lenses can be clicked where their line is in sight. */
async function lookAt(file: string, text: string): Promise<void> {
  await workbench.goToFile(file);
  await workbench.selectText(text);
}

test("each firmware is checked by its own settings", async () => {
  await workbench.errorSquiggles.first().waitFor(patience);
  await workbench.status(/Edgewise: 1 error/).waitFor(patience);
  await workbench.statusWith(/checked 2 firmwares/).waitFor(patience);
  await workbench.goToFile("ferry_serial.c");
  await workbench.lineWith("UBRR0 = DIVISOR").first().waitFor(patience);
  await workbench.screenshot("two-folders");
  expect(await workbench.errorSquiggles.count()).toBe(0);
});

// mouse(4) of the Linux man-pages, table of the three-byte packet: left with dx 12 and dy 5; dy -1.
test("a movement that is chosen in one leaves the other as it is", async () => {
  await lookAt("ferry_report.c", "@wire encodes");
  await workbench.pickFrom(workbench.lensWith("60 0C 05, as two-button wants"), "up 1", () =>
    workbench.screenshot("two-folders-movements"),
  );
  await workbench.lensWith("up 1: 4C 00 3F, as two-button wants").waitFor(patience);
  await lookAt("quay_report.c", "@wire encodes");
  await workbench.lensWith("60 0C 05, as two-button wants").waitFor(patience);
  expect(await workbench.lensWith("up 1").count()).toBe(0);
});

test("a run that is chosen in one leaves the other as it is", async () => {
  await lookAt("quay_main.c", "int main(void)");
  const failed = workbench.lensWith("plain mouse at rts-toggle, nudge: ");
  await failed.waitFor(patience);
  await lookAt("ferry_main.c", "int main(void)");
  const passed = workbench.lensWith("plain mouse at rts-toggle, nudge: passed");
  await workbench.retrying(async (limit) => {
    await passed.click(limit);
    for (const name of ["circle", "plain", "patient"]) {
      await workbench.choice(name).waitFor(limit);
      await workbench.choice(name).click(limit);
    }
    await workbench.lensWith("plain mouse at patient, circle: ").waitFor(limit);
  });
  await workbench.lensWith("plain mouse at patient, circle: passed").waitFor(patience);
  await workbench.screenshot("two-folders-runs");
  await lookAt("quay_main.c", "int main(void)");
  await failed.waitFor(patience);
  expect(await workbench.lensWith("circle").count()).toBe(0);
});

test("a run is shown of the firmware that is picked; that of the open file is offered first", async () => {
  await workbench.showRun(["ferry", "nudge", "plain", "patient"], async () => {
    await workbench.screenshot("two-folders-firmwares");
    const places = ["quay", "ferry"].map((name) => workbench.choice(name).getAttribute("data-index"));
    expect(await Promise.all(places)).toEqual(["0", "1"]);
  });
  await workbench.view.locator("h1", { hasText: "ferry: stroke nudge, mouse plain" }).waitFor(patience);
  await session.page
    .locator(".tab.active", { hasText: "Run: nudge, plain, patient (ferry)" })
    .waitFor(patience);
  expect(await workbench.view.locator(".outcome").textContent()).toBe("passed");
});

test("a folder that is taken out takes its findings along, and brings them back", async () => {
  await workbench.closeEditors();
  session.write("several.code-workspace", folders(["ferry"]));
  await workbench.statusWith(/checked 1 firmware: 0 errors/).waitFor(patience);
  session.write("several.code-workspace", folders(both));
  await workbench.statusWith(/checked 2 firmwares: 1 error/).waitFor(patience);
  await workbench.goToFile("quay_serial.c");
  await workbench.errorSquiggles.first().waitFor(patience);
  expect(await workbench.errorSquiggles.count()).toBeGreaterThan(0);
});
