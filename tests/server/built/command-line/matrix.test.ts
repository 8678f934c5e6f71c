import { spawn } from "node:child_process";
import { once } from "node:events";
import { expect, test } from "vitest";
import { program } from "../program.ts";
import { ScratchFolder } from "../scratch-folder.ts";
import { edgewise } from "./run-edgewise.ts";

const ferry = "sample-workspace/ferry-c";
const small = ["--mice", "plain,wheel", "--pcs", "rts-toggle", "--strokes", "click"];

test("a table of what works, the same however many threads there are", () => {
  const { status, stdout, stderr } = edgewise(".", "matrix", ferry, ...small, "--workers", "2");
  expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
  expect(stdout).toBe(`${ferry}
  strokes click
  seed    1

         rts-toggle
  plain  ok
  wheel  ok

2 cells of 1 stroke: all passed
`);
  const json = [...small, "--format", "json"];
  const one = edgewise(".", "matrix", ferry, ...json, "--workers", "1");
  const two = edgewise(".", "matrix", ferry, ...json, "--workers", "2");
  expect(two).toEqual(one);
  expect(JSON.parse(one.stdout).matrices[0].summary).toEqual({ passed: 2, failed: 0, notRun: 0 });
});

test("a firmware with faults fails at the line that is to blame; a shard has its part of the cells", () => {
  const faulty = "sample-workspace/ferry-c-faults";
  const { status, stdout } = edgewise(".", "matrix", faulty, ...small, "--shard", "2/2");
  expect(status).toBe(1);
  expect(stdout).toMatch(/\n {2}plain {2}-\n {2}wheel {2}x [a-z0-9]+\/[a-z-]+\n/);
  expect(stdout).toMatch(/\n {2}sample-workspace\/ferry-c-faults\/ps2\.c:\d+:\d+ {2}fault: .*\[ps2\/.*\]\n/);
  expect(stdout).toContain("of mouse wheel, PC rts-toggle, stroke click\n");
  expect(stdout).toMatch(/1 cell of 1 stroke: 0 passed, 1 failed\n$/);
});

test("JUnit XML has a case for each cell and stroke", () => {
  const { stdout } = edgewise(".", "matrix", ferry, ...small, "--format", "junit");
  expect(stdout).toContain(`<testsuite name="${ferry}" tests="2" failures="0" errors="0"`);
  expect(stdout.match(/<testcase classname="(plain|wheel)\.rts-toggle" name="click"/g)).toHaveLength(2);
});

/** Starts a matrix that takes minutes and sends SIGINT after so many milliseconds. */
async function interruptedAfter(wait: number) {
  const child = spawn(process.execPath, [program, "matrix", ferry, "--workers", "1"]);
  const written = { stdout: "", stderr: "" };
  child.stdout.on("data", (data) => {
    written.stdout += data;
  });
  child.stderr.on("data", (data) => {
    written.stderr += data;
  });
  await new Promise((resolve) => setTimeout(resolve, wait));
  child.kill("SIGINT");
  const [status] = await once(child, "close");
  return { status, ...written };
}

test("Ctrl-C ends it with one line and no report", async () => {
  let ended = await interruptedAfter(1_000);
  // Without a status the signal came before the program had begun with it: a machine may be slow.
  for (let wait = 4_000; ended.status === null && wait <= 32_000; wait *= 2)
    ended = await interruptedAfter(wait);
  expect(ended).toEqual({
    status: 130,
    stdout: "",
    stderr: expect.stringMatching(/^edgewise: interrupted after \d+ of 108 cells; there is no report\n$/),
  });
});

test.each([
  [["--mice", "plian"], 'ferry-c: there is no mouse "plian"; did you mean plain?'],
  [["--pcs", "hurried,pateint"], 'ferry-c: there is no PC "pateint"; did you mean patient?'],
  [["--strokes", "circl"], 'ferry-c: there is no stroke "circl"; did you mean circle?'],
  [["--shard", "3/2"], '--shard needs a part and how many there are, such as 1/4 up to 4/4, not "3/2"'],
  [["--format", "sarif"], '--format cannot be "sarif"; it can be text or json or junit'],
  [["--shards", "1/2"], "matrix has no option --shards; did you mean --shard?"],
])("what cannot be done is said in one line: %j", (words, message) => {
  const { status, stdout, stderr } = edgewise(".", "matrix", ferry, ...words);
  expect({ status, stdout }).toEqual({ status: 2, stdout: "" });
  expect(stderr).toContain(message);
  expect(stderr.trimEnd().split("\n")).toHaveLength(1);
});

test("a path without firmware", () => {
  const folder = new ScratchFolder({ "notes.txt": "" });
  try {
    const { status, stderr } = edgewise(folder.path, "matrix");
    expect({ status, lines: stderr.trimEnd().split("\n").length }).toEqual({ status: 2, lines: 1 });
    expect(stderr).toContain("no firmware at .");
  } finally {
    folder.remove();
  }
});
