import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { serverOptions } from "../../client/node/server-options.ts";
import { faultyFirmware } from "../server/built/sample-firmware.ts";
import { EditorSession } from "./host/editor-session.ts";
import { packagedForTests } from "./host/packaged.ts";
import { patience } from "./host/retrying.ts";
import { Workbench } from "./host/workbench.ts";

const packaged = packagedForTests();
let session: EditorSession;
let workbench: Workbench;

beforeAll(async () => {
  session = await EditorSession.open(packaged, faultyFirmware, { "security.workspace.trust.enabled": false });
  workbench = new Workbench(session.page);
  await workbench.openFile("main.c");
  await workbench.errorSquiggles.first().waitFor(patience);
});

afterAll(() => session?.close());

const counted = /Edgewise: 1 error/;

test("the server has the room for young objects that it is to have", () => {
  const [command] = session.serverCommands;
  expect(command).toEqual(expect.arrayContaining([...serverOptions]));
});

describe("a server that is killed", () => {
  test("comes back with what it had found, and the status bar tells of it", async () => {
    const before = session.servers;
    await session.killServer();
    await workbench
      .statusWith(/It ended unexpectedly and was started again once, last at /)
      .waitFor(patience);
    await workbench.status(counted).waitFor(patience);
    await workbench.errorSquiggles.first().waitFor(patience);
    await workbench.screenshot("server-restarted");
    expect(session.servers).toHaveLength(1);
    expect(session.servers).not.toEqual(before);
    expect(await workbench.notifications.filter({ hasText: "ended" }).count()).toBe(0);
  });

  test("five times in a row is not started again, which is said once; the button starts it", async () => {
    for (let times = 1; times < 5; times++) await session.killServer();
    await workbench.status(/Edgewise: ended/).waitFor(patience);
    const said = workbench.notifications.filter({ hasText: "ended unexpectedly 5 times" });
    await said.waitFor(patience);
    await workbench.screenshot("server-given-up");
    expect(session.servers).toEqual([]);
    expect(await workbench.notifications.filter({ hasText: /checker|server|client/i }).count()).toBe(1);
    await said.getByRole("button", { name: "Restart the Checker" }).click();
    await workbench.status(counted).waitFor(patience);
    await workbench.errorSquiggles.first().waitFor(patience);
    expect(session.servers).toHaveLength(1);
  });

  test("is started again by the command as well", async () => {
    const before = session.servers;
    await workbench.runCommand("Edgewise: Restart the Checker", workbench.status(/Edgewise/));
    await expect.poll(() => session.servers.some((id) => !before.includes(id)), patience).toBe(true);
    await workbench.status(counted).waitFor(patience);
    // The one before takes a while to end.
    await expect.poll(() => session.servers, patience).toHaveLength(1);
    expect(before).not.toEqual(session.servers);
  });
});

describe("settings are followed as they change", () => {
  const withLevel = (level: string) => {
    const settings: object = JSON.parse(faultyFirmware["edgewise.json"]);
    return JSON.stringify({ ...settings, rules: { "serial/baud-error": level } });
  };
  const underlined = (kind: string) => session.page.locator(`.editor-instance .squiggly-${kind}`).first();
  const gone = { state: "detached", ...patience } as const;

  test("a rule's level in edgewise.json, on disk and while it is typed", async () => {
    session.write("edgewise.json", withLevel("warning"));
    await underlined("warning").waitFor(patience);
    expect(await workbench.errorSquiggles.count()).toBe(0);
    await workbench.status(/Edgewise: 1 warning/).waitFor(patience);
    await workbench.screenshot("level-warning");
    await workbench.openFile("edgewise.json");
    await workbench.replaceText("warning", "info");
    await workbench.openFile("main.c");
    await underlined("info").waitFor(patience);
    expect(await underlined("warning").count()).toBe(0);
    await workbench.openFile("edgewise.json");
    await workbench.replaceText("info", "off");
    await workbench.openFile("main.c");
    await underlined("info").waitFor(gone);
    await workbench.openFile("edgewise.json");
    await workbench.replaceText("off", "error");
    await workbench.openFile("main.c");
    await workbench.errorSquiggles.first().waitFor(patience);
  });

  test("edgewise.enable ends the server and starts it", async () => {
    session.write(".vscode/settings.json", JSON.stringify({ "edgewise.enable": false }));
    await workbench.errorSquiggles.first().waitFor(gone);
    await workbench.statusWith(/does not run/).waitFor(patience);
    await expect.poll(() => session.servers, patience).toEqual([]);
    await workbench.screenshot("turned-off");
    session.write(".vscode/settings.json", "{}");
    await workbench.errorSquiggles.first().waitFor(patience);
    await workbench.status(counted).waitFor(patience);
    expect(session.servers).toHaveLength(1);
  });

  test("edgewise.inlayHints shows words behind numbers", async () => {
    const hint = workbench.lineWith("19230.8 baud");
    expect(await hint.count()).toBe(0);
    session.write(".vscode/settings.json", JSON.stringify({ "edgewise.inlayHints": true }));
    // The rate is 16 MHz / (16 * 52): ATmega328P datasheet, baud rate equations.
    await hint.first().waitFor(patience);
    await workbench.screenshot("inlay-hints");
    session.write(".vscode/settings.json", "{}");
    await hint.first().waitFor(gone);
  });
});
