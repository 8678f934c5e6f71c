import { cpSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { ScratchFolder } from "../scratch-folder.ts";
import { edgewise } from "./run-edgewise.ts";

const guide = readFileSync("docs/first-hour.md", "utf8");

/** The commands of the guide, those for the reader's own firmware left out. */
const commands = [...guide.matchAll(/^ {4}npx edgewise (.+)$/gm)]
  .map(([, words = ""]) => words)
  .filter((words) => !words.includes("path/to"));

describe("the first hour, step by step", () => {
  test("has commands", () => expect(commands.length).toBeGreaterThan(5));

  test.each(commands)("edgewise %s", (words) => {
    const { status, stdout, stderr } = edgewise(".", ...words.split(" "));
    expect(stderr).toBe("");
    expect(status).toBe(words.includes("faults") ? 1 : 0);
    expect(stdout).not.toBe("");
  });

  test("shows a finding as it is printed", () => {
    const shown = /```text\n([\s\S]*?)```/.exec(guide)?.[1] ?? "nothing is shown";
    expect(edgewise(".", "check", "sample-workspace/ferry-c-faults").stdout).toContain(shown.trimEnd());
  });

  test("mends it as it says, and only it", () => {
    const [, line = ""] = /^ {4}(#define REQUEST_HOLD_US \d+)$/m.exec(guide) ?? [];
    const folder = new ScratchFolder({});
    try {
      cpSync("sample-workspace/ferry-c-faults", join(folder.path, "ferry"), { recursive: true });
      const before = findings(folder.path);
      const text = readFileSync(join(folder.path, "ferry/ps2.c"), "utf8");
      expect(text).toContain(line);
      folder.write("ferry/ps2.c", text.replace(line, line.replace(/\d+$/, "120")));
      const after = new Set(findings(folder.path));
      const gone = before.filter((each) => !after.has(each));
      expect(gone.map((each) => each.split(" ")[0])).toEqual(["ps2/request-hold-short"]);
    } finally {
      folder.remove();
    }
  });

  test("names commands of the editor that there are", () => {
    const manifest: { contributes: { commands: readonly { title: string; category: string }[] } } =
      JSON.parse(readFileSync("package.json", "utf8"));
    const titles = manifest.contributes.commands.map(({ title, category }) => `${category}: ${title}`);
    const named = [...guide.matchAll(/\*(Edgewise: [^*]+)\*/g)].map(([, title = ""]) => title);
    expect(named.length).toBeGreaterThan(0);
    for (const title of named) expect(titles).toContain(title);
  });
});

function findings(folder: string): readonly string[] {
  const { stdout } = edgewise(folder, "check", "ferry", "--format", "json");
  const report: { findings: readonly { rule: string; message: string }[] } = JSON.parse(stdout);
  return report.findings.map(({ rule, message }) => `${rule} ${message}`);
}
