import { readFileSync } from "node:fs";
import { expect, test } from "vitest";

interface Command {
  readonly command: string;
  readonly enablement?: string;
}

const manifest = JSON.parse(readFileSync("package.json", "utf8"));
const commands: readonly Command[] = manifest.contributes.commands;
const steps: readonly { readonly description: string }[] = manifest.contributes.walkthroughs[0].steps;

test("what needs the checker is offered where the settings let it run", () => {
  const needsNone = ["edgewise.showLog", "edgewise.openSample", "edgewise.showWalkthrough"];
  for (const { command, enablement } of commands)
    expect([command, enablement]).toEqual([
      command,
      needsNone.includes(command) ? undefined : "config.edgewise.enable",
    ]);
});

test("no step of the walkthrough runs what needs an editor that has the focus", () => {
  const run = steps.flatMap(({ description }) => description.match(/\(command:[^)]*\)/g) ?? []);
  expect(run.length).toBeGreaterThan(0);
  expect(run.filter((command) => command.includes("command:editor."))).toEqual([]);
});
