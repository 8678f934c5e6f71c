import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, expect, test } from "vitest";
import { faultyFirmware, rightDivisor } from "../sample-firmware.ts";
import { ScratchFolder } from "../scratch-folder.ts";
import { edgewise } from "./run-edgewise.ts";

/** The sign before the fault is two UTF-16 units, one character and four bytes. */
const source = faultyFirmware["main.c"].replace("UBRR0 = 51", "/* \u{1f600} */ UBRR0 = 51");
let folder: ScratchFolder;

beforeAll(() => {
  folder = new ScratchFolder({ ...faultyFirmware, "main.c": source });
});
afterAll(() => folder.remove());

interface Region {
  readonly startLine: number;
  readonly startColumn: number;
  readonly endLine: number;
  readonly endColumn: number;
}

test("sarif: regions count UTF-16 units, and a fix put in by them is right", () => {
  const { status, stdout } = edgewise(folder.path, "check", "--format", "sarif");
  expect(status).toBe(1);
  const [run] = JSON.parse(stdout).runs;
  const [result] = run.results;
  expect(result).toMatchObject({ ruleId: "serial/baud-error", level: "error" });
  expect(run.tool.driver.rules[result.ruleIndex].id).toBe("serial/baud-error");
  const { artifactLocation } = result.locations[0].physicalLocation;
  expect(artifactLocation).toEqual({ uri: "main.c", uriBaseId: "WORKING_FOLDER" });
  const line = source.split("\n")[4] ?? "";
  const textOf = ({ startLine, startColumn, endLine, endColumn }: Region) => {
    expect([startLine, endLine]).toEqual([5, 5]);
    return line.slice(startColumn - 1, endColumn - 1);
  };
  expect(textOf(result.locations[0].physicalLocation.region)).toBe("51");
  const [replacement] = result.fixes[0].artifactChanges[0].replacements;
  expect(textOf(replacement.deletedRegion)).toBe("51");
  expect(replacement.insertedContent.text).toBe(String(rightDivisor));
});

test("sarif: the page of every rule is a file that is there", () => {
  const [run] = JSON.parse(edgewise(folder.path, "check", "--format", "sarif").stdout).runs;
  expect(run.tool.driver.rules.length).toBeGreaterThan(20);
  for (const { id, helpUri } of run.tool.driver.rules) {
    expect(readFileSync(fileURLToPath(helpUri), "utf8")).toContain(`\`${id}\``);
  }
});

test("github: a command with place and rule, and the summary", () => {
  const { status, stdout } = edgewise(folder.path, "check", "--format", "github");
  expect(status).toBe(1);
  const [command, summary] = stdout.trimEnd().split("\n");
  // Column 22 is behind four spaces, `/* `, two units, ` */ ` and `UBRR0 = `: 4 + 3 + 2 + 4 + 8 units.
  expect(command).toMatch(
    /^::error file=main\.c,line=5,endLine=5,col=22,endColumn=24,title=serial\/baud-error::\S/,
  );
  expect(summary).toMatch(/^1 error in 2 files read$/);
});

test("junit: the rule fails in the suite of its file", () => {
  const { status, stdout } = edgewise(folder.path, "check", "--format", "junit");
  expect(status).toBe(1);
  expect(stdout).toContain('<testsuite name="main.c" tests="2" failures="1"');
  expect(stdout).toContain('<testcase classname="serial" name="serial/baud-error"');
});

test("a report in any format goes to a file as well", () => {
  const told = edgewise(folder.path, "check", "--format", "github").stdout;
  const { stdout } = edgewise(folder.path, "check", "--format", "github", "--output", "report.txt");
  expect(stdout).toBe("");
  expect(readFileSync(`${folder.path}/report.txt`, "utf8")).toBe(told);
});
