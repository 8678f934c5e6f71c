import { readFileSync } from "node:fs";
import { expect, test } from "vitest";

interface Command {
  readonly command: string;
  readonly enablement?: string;
}

const manifest = JSON.parse(readFileSync("package.json", "utf8"));
const commands: readonly Command[] = manifest.contributes.commands;

test("what needs the checker is offered where the settings let it run", () => {
  const needsNone = ["edgewise.showLog", "edgewise.openSample", "edgewise.showWalkthrough"];
  for (const { command, enablement } of commands)
    expect([command, enablement]).toEqual([
      command,
      needsNone.includes(command) ? undefined : "config.edgewise.enable",
    ]);
});
