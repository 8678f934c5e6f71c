import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { rules } from "../../../../src-core/checks/registry.ts";
import type { Example } from "../../../../src-core/checks/rule.ts";
import { factsOf, findingsIn } from "../harness.ts";
import { mouseLibrary } from "./firmware/mouse-library.ts";
import { queuedC } from "./firmware/queued-c.ts";
import { remoteSketch } from "./firmware/remote-sketch.ts";

const ps2Rules = rules.filter(({ id }) => id.startsWith("ps2/"));

function messages(example: Example): string[] {
  return findingsIn(example, ps2Rules).map(({ rule, message }) => `${rule}: ${message}`);
}

function bytes(example: Example): string[] {
  const hex = (byte: number | undefined): string => byte?.toString(16).toUpperCase().padStart(2, "0") ?? "??";
  return factsOf(example).ps2.sequences.map((sequence) =>
    sequence.bytes.map(({ byte }) => hex(byte)).join(" "),
  );
}

/** Firmware that works with its mouse, and what it leaves to luck: warnings, none of them an error. */
const working: readonly (readonly [string, Example, readonly string[]])[] = [
  ["a sketch in remote mode", remoteSketch, ["ps2/ack-ignored", "ps2/parity-unchecked", "ps2/wait-forever"]],
  ["a class in its own files", mouseLibrary, ["ps2/ack-ignored", "ps2/parity-unchecked", "ps2/wait-forever"]],
  ["interrupts and a table of steps", queuedC, ["ps2/ack-ignored", "ps2/parity-unchecked"]],
];

function rulesIn(example: Example): string[] {
  return [...new Set(findingsIn(example, ps2Rules).map(({ rule }) => rule))].sort();
}

describe("whole firmware that works", () => {
  it.each(working)("%s has no PS/2 error, and warnings for what it leaves to luck", (_, example, luck) => {
    expect(findingsIn(example, ps2Rules).filter(({ severity }) => severity === "error")).toEqual([]);
    expect(rulesIn(example)).toEqual([...luck].sort());
  });

  it("shows what it sends", () => {
    expect(bytes(remoteSketch)).toEqual(["FF F0 EB"]);
    expect(bytes(mouseLibrary)).toContain("FF F3 C8 F3 64 F3 50 F2 F0 E8 02 EB");
    // Once at the start, and again when a byte was not taken.
    expect(bytes(queuedC)).toEqual(["FF F3 28 E8 02 E6 F4 FF F3 28 E8 02 E6 F4"]);
  });
});

/** The files of a project of the sample workspace. */
function sample(name: string): Example {
  const folder = new URL(`../../../../sample-workspace/${name}/`, import.meta.url);
  return Object.fromEntries(
    readdirSync(folder).map((file) => [file, readFileSync(new URL(file, folder), "utf8")]),
  );
}

describe("the sample workspace", () => {
  it.each(["ferry-c", "ferry-sketch"])("%s has no PS/2 finding", (name) => {
    expect(messages(sample(name))).toEqual([]);
  });

  it.each([
    [
      "ferry-c-faults",
      [
        "line-driven-high",
        "request-hold-short",
        "reset-wait-short",
        "argument-range",
        "reporting-not-enabled",
        "parity-unchecked",
        "ack-ignored",
        "packet-resync",
        ...Array<string>(3).fill("wait-forever"),
      ],
    ],
    [
      "ferry-sketch-faults",
      ["no-pullup", "wheel-sequence", "command-unknown", "wait-forever", "ack-ignored"],
    ],
  ])("the planted faults of %s are found, each once", (name, expected) => {
    const found = findingsIn(sample(name), ps2Rules).map(({ rule }) => rule.slice("ps2/".length));
    expect(found.sort()).toEqual([...expected].sort());
  });
});

describe("whole firmware with one fault", () => {
  const changed = (example: Example, file: string, from: string, to: string): Example => {
    const text = example[file] ?? "";
    expect(text).toContain(from);
    return { ...example, [file]: text.replace(from, to) };
  };

  it.each<[string, Example, string]>([
    [
      "a short hold",
      changed(
        remoteSketch,
        "remote.ino",
        "delayMicroseconds(300);\n  goLow(MDATA)",
        "delayMicroseconds(50);\n  goLow(MDATA)",
      ),
      "ps2/request-hold-short",
    ],
    [
      "a line driven high",
      changed(
        remoteSketch,
        "remote.ino",
        "  pinMode(pin, INPUT);\n  digitalWrite(pin, HIGH);",
        "  pinMode(pin, OUTPUT);\n  digitalWrite(pin, HIGH);",
      ),
      "ps2/line-driven-high",
    ],
    [
      "no pull-up",
      changed(
        remoteSketch,
        "remote.ino",
        "  pinMode(pin, INPUT);\n  digitalWrite(pin, HIGH);",
        "  pinMode(pin, INPUT);",
      ),
      "ps2/no-pullup",
    ],
    [
      "no polling",
      changed(remoteSketch, "remote.ino", "mouseWrite(0xeb)", "mouseWrite(0xea)"),
      "ps2/reporting-not-enabled",
    ],
    [
      "a wrong knock",
      changed(mouseLibrary, "PortMouse.cpp", "setSampleRate(80)", "setSampleRate(60)"),
      "ps2/wheel-sequence",
    ],
    [
      "a resolution in counts",
      changed(mouseLibrary, "adapter.ino", "setResolution(2)", "setResolution(4)"),
      "ps2/argument-range",
    ],
    [
      "a wrong command",
      changed(mouseLibrary, "PortMouse.h", "GET_DEVICE_ID 0xF2", "GET_DEVICE_ID 0xF1"),
      "ps2/command-unknown",
    ],
    [
      "a short self-test",
      changed(queuedC, "main.c", "{0xFF, 3, 2000}", "{0xFF, 3, 200}"),
      "ps2/reset-wait-short",
    ],
    [
      "a rate that no mouse takes",
      changed(queuedC, "main.c", "{40, 1, 50}", "{45, 1, 50}"),
      "ps2/argument-range",
    ],
    ["reporting forgotten", changed(queuedC, "main.c", ", {0xF4, 1, 50}", ""), "ps2/reporting-not-enabled"],
  ])("%s is found, and nothing else than without it", (_, example, rule) => {
    const same = working.find(([, each]) => Object.keys(each).join() === Object.keys(example).join());
    expect(rulesIn(example)).toEqual([...(same?.[2] ?? []), rule].sort());
  });
});
