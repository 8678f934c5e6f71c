import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { faultyFirmware, serialSource } from "../sample-firmware.ts";
import { ScratchFolder } from "../scratch-folder.ts";
import { edgewise } from "./run-edgewise.ts";

let folder: ScratchFolder;

beforeEach(() => {
  folder = new ScratchFolder(faultyFirmware);
});
afterEach(() => folder.remove());

const check = (...words: readonly string[]) => edgewise(folder.path, "check", ...words);
const acceptAll = (...words: readonly string[]) =>
  check("--baseline", "accepted.json", "--accept-all", ...words);
const replaceMain = (text: string) => writeFileSync(join(folder.path, "main.c"), text);

describe("a baseline", () => {
  test("is written on request, and what it accepts fails nothing from then on", () => {
    expect(check().status).toBe(1);
    const written = acceptAll();
    expect(written.status).toBe(0);
    expect(written.stdout).toMatch(/^no findings in 3 files read, and 1 accepted by the baseline\n$/);
    const { status, stdout } = check("--baseline", "accepted.json", "--format", "json");
    expect(status).toBe(0);
    expect(JSON.parse(stdout)).toMatchObject({ findings: [], summary: { errors: 0, accepted: 1 } });
  });

  test("knows the line again when it has moved, and serves from another folder", () => {
    acceptAll();
    replaceMain(`\n\n${serialSource(51)}`);
    expect(check("--baseline", "accepted.json").status).toBe(0);
    const below = join(folder.path, "below");
    mkdirSync(below);
    expect(edgewise(below, "check", "..", "--baseline", "../accepted.json").status).toBe(0);
  });

  test("does not accept another fault", () => {
    acceptAll();
    replaceMain(serialSource(52));
    const { status, stdout } = check("--baseline", "accepted.json", "--format", "json");
    expect(status).toBe(1);
    const rules = JSON.parse(stdout).findings.map(({ rule, file }: { rule: string; file: string }) => [
      rule,
      file,
    ]);
    expect(rules).toEqual([
      ["serial/baud-error", "main.c"],
      ["note/unattached", "accepted.json"],
    ]);
  });

  test("accepts in vain what is mended, which is said and fails with --max-warnings 0", () => {
    acceptAll();
    replaceMain(serialSource(832));
    const { status, stdout } = check("--baseline", "accepted.json");
    expect(status).toBe(0);
    expect(stdout).toMatch(
      /accepted\.json\n\n {2}4:5 {2}warning: there is nothing to accept: `serial\/baud-error` finds/,
    );
    expect(check("--baseline", "accepted.json", "--max-warnings", "0").status).toBe(1);
    acceptAll();
    expect(JSON.parse(readFileSync(join(folder.path, "accepted.json"), "utf8")).accepted).toEqual([]);
  });
});

test.each<[what: string, words: string[], files: Record<string, string>, line: RegExp]>([
  [
    "a baseline that is not there",
    ["--baseline", "no.json"],
    {},
    /cannot read baseline no\.json: no such file or folder; --accept-all/,
  ],
  ["a baseline that is a folder", ["--baseline", "."], {}, /cannot read baseline \.: it is a folder/],
  [
    "a baseline that is no JSON",
    ["--baseline", "b.json"],
    { "b.json": "{\n  !\n}" },
    /b\.json:2:3: not valid JSON/,
  ],
  [
    "a baseline of another version",
    ["--baseline", "b.json"],
    { "b.json": '{"version":9,"accepted":[]}' },
    /b\.json:1:12: `version`/,
  ],
  ["to accept without a file", ["--accept-all"], {}, /--accept-all needs a file to write: --baseline FILE/],
  [
    "to accept into a folder that is not there",
    ["--accept-all", "--baseline", "no/b.json"],
    {},
    /cannot write no\/b\.json/,
  ],
])("2, and one line: %s", (_, words, files, line) => {
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder.path, name), text);
  const { status, stdout, stderr } = check(...words);
  expect(stderr).toMatch(line);
  expect(stderr.trimEnd().split("\n")).toHaveLength(1);
  expect({ status, stdout }).toEqual({ status: 2, stdout: "" });
});
