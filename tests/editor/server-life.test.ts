import { afterAll, beforeAll, describe, expect, test } from "vitest";
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

/** Kills the server's process once there is one, and waits until it is gone. */
async function killServer(): Promise<void> {
  await expect.poll(() => session.servers.length, patience).toBe(1);
  const [id] = session.servers;
  if (id === undefined) throw new Error("no server runs");
  process.kill(id, "SIGKILL");
  await expect.poll(() => session.servers.includes(id), patience).toBe(false);
}

const counted = /Edgewise: 1 error/;

describe("a server that is killed", () => {
  test("comes back with what it had found, and the status bar tells of it", async () => {
    const before = session.servers;
    await killServer();
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
    for (let times = 1; times < 5; times++) await killServer();
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
    expect(session.servers).toHaveLength(1);
  });
});
