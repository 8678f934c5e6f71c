import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { sampleFiles } from "../server/built/sample-files.ts";
import { faultyFirmware, rightDivisor } from "../server/built/sample-firmware.ts";
import { EditorSession } from "./host/editor-session.ts";
import { memoryExtensionForTests, memoryFolder } from "./host/memory-extension.ts";
import { packagedForTests } from "./host/packaged.ts";
import { patience } from "./host/retrying.ts";
import { Workbench } from "./host/workbench.ts";

const packaged = packagedForTests();
const memory = memoryExtensionForTests();
const few = { mice: ["plain", "wheel"], pcs: ["rts-toggle"], strokes: ["nudge"] };
const sample = sampleFiles("ferry-c", few);
// A line rate far from 1200: ATmega328P datasheet, baud rate equations, U2X0 = 0.
const files = { ...sample, "serial.c": (sample["serial.c"] ?? "").replace("UBRR0 = DIVISOR", "UBRR0 = 51") };

const ids = ["edgewise.edgewise", "edgewise-tests.memory-files"];
const web = Object.fromEntries(ids.map((id) => [id, ["web"]]));

/** A folder that an extension provides, on no disk. */
describe.each([
  { where: "desktop", settings: {}, servers: 1 },
  { where: "browser", settings: { "remote.extensionKind": web }, servers: 0 },
])("a virtual folder, on the side of the $where", ({ where, settings, servers }) => {
  let session: EditorSession;
  let workbench: Workbench;

  beforeAll(async () => {
    session = await EditorSession.open(
      packaged,
      {},
      { "security.workspace.trust.enabled": false, "memoryFiles.files": files, ...settings },
      { address: memoryFolder, others: [memory.vsix] },
    );
    workbench = new Workbench(session.page);
    await workbench.openFile("serial.c");
  });

  afterAll(() => session?.close());

  test("a fault is underlined, by the settings of a file that is not open", async () => {
    await workbench.selectText("UBRR0 = 51");
    await workbench.errorSquiggles.first().waitFor(patience);
    await session.page.locator(".statusbar-item", { hasText: /Edgewise: 1 error/ }).waitFor(patience);
    await workbench.screenshot(`virtual-fault-${where}`);
    expect(session.servers).toHaveLength(servers);
  });

  test("a hover explains the number, and the fix mends it", async () => {
    const hover = await workbench.hoverOver("51", "baud");
    expect(await hover.textContent()).toContain("1200");
    await workbench.applyFix("51", String(rightDivisor), () => workbench.screenshot(`virtual-fix-${where}`));
    await workbench.lineWith(`UBRR0 = ${rightDivisor};`).waitFor(patience);
    await workbench.errorSquiggles.first().waitFor({ state: "detached", ...patience });
  });

  test("the matrix of the buffers is run, and a saved file stays mended when it is closed", async () => {
    await session.page.keyboard.press("Control+s");
    await session.page.locator(".tab.active.dirty").waitFor({ state: "detached", ...patience });
    await workbench.openFile("main.c");
    await workbench.showMatrix();
    await workbench.view.locator("output", { hasText: "All 2 cells" }).waitFor(patience);
    await workbench.screenshot(`virtual-matrix-${where}`);
    expect(await workbench.view.locator("td.failed").count()).toBe(0);
  });
});

describe("a virtual folder of more sources than a firmware has", () => {
  let session: EditorSession;

  beforeAll(async () => {
    const many = Object.fromEntries(
      Array.from({ length: 2_001 }, (_, index) => [`more/${index}.c`, "int x;\n"]),
    );
    session = await EditorSession.open(
      packaged,
      {},
      { "security.workspace.trust.enabled": false, "memoryFiles.files": { ...faultyFirmware, ...many } },
      { address: memoryFolder, others: [memory.vsix] },
    );
  });

  afterAll(() => session?.close());

  test("is read as far as the limit, which is said, and what is open is checked", async () => {
    const workbench = new Workbench(session.page);
    await workbench.openFile("main.c");
    await workbench.errorSquiggles.first().waitFor(patience);
    const message = session.page.locator(".notification-list-item", {
      hasText: "has more than 2000 sources",
    });
    await message.waitFor(patience);
    await workbench.screenshot("virtual-many");
    expect(await message.count()).toBe(1);
  });
});
