import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { edgewise } from "./run-edgewise.ts";

/** What is wrong with the sample firmwares, by hand: planted when they were written. */
const planted: Readonly<Record<string, readonly string[]>> = {
  "ferry-c": [],
  "ferry-sketch": [],
  "ferry-c-faults": [
    "main.c board/integer-overflow: 60 * 1000",
    "main.c note/unknown-name: rihgt",
    "main.c ps2/packet-resync: &packet[length]",
    "main.c report/y-direction: y & 0x3F",
    "ps2.c board/shared-not-volatile: ring",
    "ps2.c board/shared-not-volatile: ring_head",
    "ps2.c board/shared-not-volatile: frame_bit",
    "ps2.c ps2/line-driven-high: PORTD |= _BV(PS2_DATA)",
    "ps2.c board/delay-in-isr: 80",
    "ps2.c ps2/request-hold-short: REQUEST_HOLD_US",
    "ps2.c ps2/reset-wait-short: 20",
    "ps2.c ps2/argument-range: 50",
    "ps2.c ps2/reporting-not-enabled: command(2)",
    "ps2.c ps2/parity-unchecked: PIND",
    "ps2.c ps2/ack-ignored: ps2_send(value)",
    "ps2.c ps2/wait-forever: PIND & _BV(PS2_CLOCK)",
    "ps2.c ps2/wait-forever: PIND & _BV(PS2_CLOCK)",
    "ps2.c ps2/wait-forever: !ps2_read(&reply)",
    "serial.c serial/baud-error: DIVISOR",
    "serial.c serial/ident-missing: DIVISOR",
    "serial.c serial/line-format: _BV(UCSZ01) | _BV(UCSZ00)",
  ],
  "ferry-sketch-faults": [
    "ferry-sketch-faults.ino board/pin-conflict: 3",
    "ferry-sketch-faults.ino note/unknown-name: serial.bit-tme",
    "ferry-sketch-faults.ino board/shared-not-volatile: received",
    "ferry-sketch-faults.ino board/shared-not-volatile: complete",
    "ferry-sketch-faults.ino note/syntax: ps2/wait-forever",
    "ferry-sketch-faults.ino ps2/no-pullup: INPUT",
    "ferry-sketch-faults.ino ps2/wheel-sequence: 60",
    "ferry-sketch-faults.ino ps2/command-unknown: 0xF1",
    "ferry-sketch-faults.ino ps2/ack-ignored: sendToMouse(value)",
    "ferry-sketch-faults.ino ps2/wait-forever: digitalRead(CLOCK_PIN) != level",
    "ferry-sketch-faults.ino serial/bit-time: 780",
    "ferry-sketch-faults.ino serial/ident-missing: BIT_US",
    "ferry-sketch-faults.ino board/pin-no-interrupt: CLOCK_PIN",
  ],
  // Told by runs alone: the clock's handler stretches what is timed by code, data to the mouse and bits to the PC.
  "ferry-sketch-second-faults": [
    "ferry-sketch-second-faults.ino ps2/parity-unchecked: digitalRead(DATA_PIN)",
    "ferry-sketch-second-faults.ino ps2/sample-edge: pinMode(pin, OUTPUT)",
    "ferry-sketch-second-faults.ino serial/bit-time: digitalWrite(TX_PIN, value & 1)",
    "ferry-sketch-second-faults.ino serial/bit-time: digitalWrite(TX_PIN, HIGH)",
    "ferry-sketch-second-faults.ino ps2/wait-forever: !complete",
    "ferry-sketch-second-faults.ino ps2/ack-ignored: sendToMouse(value)",
    "ferry-sketch-second-faults.ino serial/throughput: 80",
    "ferry-sketch-second-faults.ino ps2/packet-resync: packet[length]",
  ],
};

interface JsonPlace {
  readonly line: number;
  readonly column: number;
}

interface JsonFinding {
  readonly rule: string;
  readonly file: string;
  readonly range: { readonly start: JsonPlace; readonly end: JsonPlace };
}

describe("the sample workspace", () => {
  for (const [folder, faults] of Object.entries(planted)) {
    test(`${folder}: ${faults.length} planted faults, each found where it stands`, () => {
      const path = `sample-workspace/${folder}`;
      const { stdout } = edgewise(".", "check", path, "--format", "json");
      const report: { findings: readonly JsonFinding[]; notUnderstood: readonly unknown[] } =
        JSON.parse(stdout);
      const found = report.findings.map(
        (each) => `${each.file.slice(path.length + 1)} ${each.rule}: ${textOf(each)}`,
      );
      expect(found.toSorted()).toEqual(faults.toSorted());
      expect(report.notUnderstood).toEqual([]);
    });
  }

  test("README shows what the program prints", () => {
    const shown = /```text\n([\s\S]*?)```/.exec(readFileSync("README.md", "utf8"))?.[1];
    const { stdout } = edgewise(".", "check", "sample-workspace/ferry-c-faults");
    expect(stdout).toContain(shown);
  });
});

/** The characters of a finding, by its 1-based lines and columns; all of them lie on one line. */
function textOf({ file, range: { start, end } }: JsonFinding): string {
  const line = readFileSync(file, "utf8").split("\n")[start.line - 1] ?? "";
  return line.slice(start.column - 1, end.line === start.line ? end.column - 1 : undefined);
}
