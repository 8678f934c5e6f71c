import { mkdirSync, readFileSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { afterEach, describe, expect, test } from "vitest";
import { faultyFirmware, rightDivisor, rightFirmware } from "../sample-firmware.ts";
import { ScratchFolder } from "../scratch-folder.ts";
import { edgewise } from "./run-edgewise.ts";

const folders: ScratchFolder[] = [];

function folderWith(files: Readonly<Record<string, string>>): ScratchFolder {
  const folder = new ScratchFolder(files);
  folders.push(folder);
  return folder;
}

afterEach(() => {
  for (const folder of folders.splice(0)) folder.remove();
});

describe("the exit status tells a script what happened", () => {
  test("0: nothing is wrong", () => {
    const { status, stdout, stderr } = edgewise(folderWith(rightFirmware).path, "check");
    expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
    expect(stdout).toMatch(/^no findings/);
  });

  test("1: an error was found, and the report names place, rule and fix", () => {
    const { status, stdout, stderr } = edgewise(folderWith(faultyFirmware).path, "check", ".");
    expect({ status, stderr }).toEqual({ status: 1, stderr: "" });
    expect(stdout).toContain("main.c\n");
    expect(stdout).toMatch(/\n {2}5:\d+ .*\[serial\/baud-error\]\n/);
    expect(stdout).toContain("UBRR0 = 51;");
    expect(stdout).toContain(String(rightDivisor));
  });

  test("edgewise.json stands for the folder it is in", () => {
    const { status, stdout, stderr } = edgewise(folderWith(rightFirmware).path, "check", "edgewise.json");
    expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
    expect(stdout).toMatch(/^no findings/);
  });

  test("warnings fail the check only above --max-warnings", () => {
    const settings = JSON.parse(faultyFirmware["edgewise.json"]);
    const folder = folderWith({
      ...faultyFirmware,
      "edgewise.json": JSON.stringify({ ...settings, rules: { "serial/baud-error": "warning" } }),
    });
    expect(edgewise(folder.path, "check").status).toBe(0);
    expect(edgewise(folder.path, "check", "--max-warnings", "1").status).toBe(0);
    expect(edgewise(folder.path, "check", "--max-warnings", "0").status).toBe(1);
  });

  test("a rule that is off finds nothing", () => {
    const settings = JSON.parse(faultyFirmware["edgewise.json"]);
    const folder = folderWith({
      ...faultyFirmware,
      "edgewise.json": JSON.stringify({ ...settings, rules: { "serial/baud-error": "off" } }),
    });
    const { status, stdout } = edgewise(folder.path, "check");
    expect(status).toBe(0);
    expect(stdout).not.toContain("baud-error");
  });
});

describe("what cannot be done is one line on stderr and status 2", () => {
  const settings = faultyFirmware["edgewise.json"];
  test.each<[what: string, words: string[], files: Record<string, string>, line: RegExp]>([
    ["a path that is not there", ["check", "nowhere"], {}, /no file or folder nowhere/],
    ["a folder without firmware", ["check"], { "readme.txt": "" }, /no firmware at \./],
    ["an unknown option", ["check", "--fromat", "json"], {}, /no option --fromat; did you mean --format\?/],
    ["an unknown format", ["check", "--format", "jsno"], {}, /cannot be "jsno"; did you mean json\?/],
    ["a bound that is no number", ["check", "--max-warnings", "few"], {}, /whole number.*not "few"/],
    ["an unknown command", ["chekc"], {}, /no command "chekc"; did you mean "check"\?/],
    ["a command that does not exist", ["polish"], {}, /no command "polish"; there is check, /],
    ["no command", [], {}, /no command given/],
    ["lsp without a way to speak", ["lsp"], {}, /needs --stdio/],
    [
      "an output file in a folder that is not there",
      ["check", "--output", "no/where.txt"],
      rightFirmware,
      /cannot write no\/where\.txt: no such file or folder/,
    ],
    [
      "edgewise.json that is no JSON",
      ["check"],
      { ...rightFirmware, "edgewise.json": '{\n  "board": {,}\n}\n' },
      /edgewise\.json:2:13: /,
    ],
    [
      "an unknown key in edgewise.json",
      ["check"],
      { ...rightFirmware, "edgewise.json": settings.replace('"wires"', '"wirse"') },
      /edgewise\.json:1:\d+: .*`wirse`.*did you mean `wires`\?/,
    ],
    [
      "a wrong type in edgewise.json",
      ["check"],
      { ...rightFirmware, "edgewise.json": settings.replace("1200", '"fast"') },
      /edgewise\.json:1:\d+: .*baud.*number/,
    ],
    [
      "a chip that is no text in edgewise.json",
      ["check"],
      { ...rightFirmware, "edgewise.json": settings.replace('"atmega328p"', "328") },
      /edgewise\.json:1:\d+: `board\.chip`: expected one of \d+ names, such as "atmega328p", /,
    ],
    [
      "an unknown chip in edgewise.json",
      ["check"],
      { ...rightFirmware, "edgewise.json": settings.replace("atmega328p", "atmega328x") },
      /edgewise\.json:1:\d+: .*`atmega328x`.*`atmega328p`/,
    ],
  ])("%s", (_, words, files, line) => {
    const { status, stdout, stderr } = edgewise(folderWith(files).path, ...words);
    expect(stderr).toMatch(line);
    expect(stderr.trimEnd().split("\n")).toHaveLength(1);
    expect({ status, stdout }).toEqual({ status: 2, stdout: "" });
  });

  test("a source that is a link to nothing", () => {
    const folder = folderWith(rightFirmware);
    symlinkSync(join(folder.path, "gone.c"), join(folder.path, "serial.c"));
    const { status, stderr } = edgewise(folder.path, "check");
    expect(stderr).toBe("edgewise: cannot read serial.c: it is a link to nothing\n");
    expect(status).toBe(2);
  });

  test("an output file that is a folder", () => {
    const folder = folderWith(rightFirmware);
    mkdirSync(join(folder.path, "report"));
    const { status, stderr } = edgewise(folder.path, "check", "--output", "report");
    expect(stderr).toBe("edgewise: cannot write report: it is a folder\n");
    expect(status).toBe(2);
  });
});

test("in a folder below, the settings above hold", () => {
  const folder = folderWith({
    "edgewise.json": faultyFirmware["edgewise.json"],
    "src/main.c": faultyFirmware["main.c"],
  });
  const { status, stdout } = edgewise(join(folder.path, "src"), "check");
  expect(status).toBe(1);
  expect(stdout).toMatch(/^main\.c\n/);
  expect(stdout).toContain("see     ../edgewise.json:1:");
});

describe("JSON for scripts", () => {
  test("paths are relative to the working folder, with slashes, wherever the firmware is", () => {
    const folder = folderWith({
      "adapter/edgewise.json": faultyFirmware["edgewise.json"],
      "adapter/main.c": faultyFirmware["main.c"],
      "elsewhere/note.txt": "",
    });
    const fromAbove = edgewise(folder.path, "check", "adapter", "--format", "json");
    const fromBeside = edgewise(join(folder.path, "elsewhere"), "check", "../adapter", "--format=json");
    expect(JSON.parse(fromAbove.stdout).findings[0].file).toBe("adapter/main.c");
    expect(JSON.parse(fromBeside.stdout).findings[0].file).toBe("../adapter/main.c");
    expect(fromAbove.status).toBe(1);
  });

  test("version 1 has findings, what was not understood, and a summary", () => {
    const report = JSON.parse(edgewise(folderWith(faultyFirmware).path, "check", "--format", "json").stdout);
    expect(Object.keys(report)).toEqual(["version", "findings", "notUnderstood", "summary"]);
    expect(report.version).toBe(1);
    expect(report.summary).toMatchObject({ errors: 1, warnings: 0 });
    expect(report.findings).toHaveLength(1);
    expect(report.findings[0]).toMatchObject({
      rule: "serial/baud-error",
      severity: "error",
      file: "main.c",
      range: { start: { line: 5 }, end: { line: 5 } },
    });
    const edits = report.findings[0].fixes.flatMap((fix: { edits: { text: string }[] }) => fix.edits);
    expect(edits.map((edit: { text: string }) => edit.text)).toContain(String(rightDivisor));
  });

  test("--output writes the report to a file and nothing else", () => {
    const folder = folderWith(faultyFirmware);
    const { status, stdout, stderr } = edgewise(
      folder.path,
      "check",
      "--format",
      "json",
      "--output",
      "out.json",
    );
    expect({ status, stdout, stderr }).toEqual({ status: 1, stdout: "", stderr: "" });
    expect(JSON.parse(readFileSync(join(folder.path, "out.json"), "utf8")).version).toBe(1);
  });
});

test("help lists what there is, and the version is the package's", () => {
  const { path } = folderWith({});
  const help = edgewise(path, "--help");
  expect(help.status).toBe(0);
  expect(help.stdout).toMatch(/edgewise check [\s\S]*edgewise simulate [\s\S]*edgewise lsp --stdio/);
  expect(edgewise(path, "check", "--help").stdout).toContain("--max-warnings N");
  const { version } = JSON.parse(readFileSync("package.json", "utf8"));
  expect(edgewise(path, "--version").stdout).toBe(`${version}\n`);
});

test("a folder named like a source is a folder", () => {
  const folder = folderWith(rightFirmware);
  mkdirSync(join(folder.path, "lib.c"));
  expect(edgewise(folder.path, "check").status).toBe(0);
});
