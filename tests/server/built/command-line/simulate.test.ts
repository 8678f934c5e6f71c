import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { ScratchFolder } from "../scratch-folder.ts";
import { edgewise } from "./run-edgewise.ts";

const ferry = "sample-workspace/ferry-c";

test("a firmware that works passes, and the two paths are drawn", () => {
  const { status, stdout, stderr } = edgewise(".", "simulate", ferry, "--stroke", "circle");
  expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
  expect(stdout).toContain("identification  identified: 4D");
  expect(stdout).toContain("sent by the mouse");
  expect(stdout.trimEnd()).toMatch(/passed$/);
  // What README shows of it.
  const shown = /## Running the whole firmware[\s\S]*?```text\n([\s\S]*?)```/.exec(
    readFileSync("README.md", "utf8"),
  )?.[1];
  expect(stdout).toContain(shown);
});

test("one with faults fails at the line that is to blame", () => {
  const { status, stdout } = edgewise(
    ".",
    "simulate",
    "sample-workspace/ferry-c-faults",
    "--stroke",
    "nudge",
  );
  expect(status).toBe(1);
  expect(stdout).toMatch(/ps2\.c:\d+:\d+ {2}fault: .*the clock is held low.*\[ps2\/request-hold-short\]/);
});

test("JSON holds the run, and a value change dump its wires", () => {
  const json = edgewise(".", "simulate", ferry, "--stroke", "click", "--format", "json");
  const [run] = JSON.parse(json.stdout).runs;
  expect(run).toMatchObject({ project: ferry, stroke: "click", passed: true, seed: 1, failures: [] });

  const folder = new ScratchFolder({});
  try {
    const output = join(folder.path, "run.vcd");
    const { status, stdout } = edgewise(
      ".",
      "simulate",
      ferry,
      "--stroke",
      "rest",
      "--format",
      "vcd",
      "--output",
      output,
    );
    expect({ status, stdout }).toEqual({ status: 0, stdout: "" });
    expect(existsSync(output) && readFileSync(output, "utf8")).toContain("$timescale 1 ps $end");
  } finally {
    folder.remove();
  }
});

test("JSON holds the details of a run: edges with their places, decoded bytes, threads", () => {
  const json = edgewise(".", "simulate", ferry, "--stroke", "click", "--format", "json");
  const { details } = JSON.parse(json.stdout).runs[0];
  const pulled = details.edges.find((edge: { by: string }) => edge.by === "firmware");
  expect(details.places[pulled.place]).toMatchObject({
    file: expect.stringMatching(/^sample-workspace\/ferry-c\/\w+\.[ch]$/),
    range: { start: { line: expect.any(Number), column: expect.any(Number) } },
  });
  expect(details.frames).toContainEqual(
    expect.objectContaining({ sender: "host", byte: 0xf4, meaning: "enable reporting" }),
  );
  expect(details.threads.length).toBeGreaterThan(0);
  expect(details.code.spans.length).toBeGreaterThan(0);
  // A record a line.
  expect(json.stdout.split("\n").length).toBeLessThan(
    details.edges.length + details.code.spans.length + 2000,
  );
});

test("the picture of a run, and of a part of it", () => {
  const whole = edgewise(".", "simulate", ferry, "--stroke", "click", "--format", "svg");
  expect(whole.stderr).toBe("");
  expect(whole.stdout).toContain("<title");
  expect(whole.stdout).toContain(">The whole run</text>");
  const part = ["--from", "820", "--to", "840"];
  const { stdout } = edgewise(".", "simulate", ferry, "--stroke", "click", "--format", "svg", ...part);
  expect(stdout).toContain(">From 820 ms to 840 ms of ");
  expect(stdout).toContain("set sample rate");
});

test("a project that several paths name is run once", () => {
  const json = edgewise(
    ".",
    "simulate",
    ferry,
    `${ferry}/edgewise.json`,
    "--stroke",
    "rest",
    "--format",
    "json",
  );
  expect(JSON.parse(json.stdout).runs).toHaveLength(1);
});

test.each([
  [["--stroke", "circl"], 'there is no stroke "circl"; did you mean circle?'],
  [["--seed", "many"], '--seed needs a whole number from 0, not "many"'],
  [["--format", "vdc"], '--format cannot be "vdc"; did you mean vcd?'],
  [["--from", "10"], "--from is for --format svg, not for text"],
  [["--format", "svg", "--to", "soon"], '--to needs a number of milliseconds from 0, not "soon"'],
  [["--format", "svg", "--from", "900000"], "nothing lies between 900000 ms and"],
  [["--mose", "plain"], "simulate has no option --mose; did you mean --mouse?"],
])("what cannot be done is said in one line: %s", (words, message) => {
  const { status, stdout, stderr } = edgewise(".", "simulate", ferry, ...words);
  expect({ status, stdout }).toEqual({ status: 2, stdout: "" });
  expect(stderr).toContain(message);
  expect(stderr.trimEnd().split("\n")).toHaveLength(1);
});
