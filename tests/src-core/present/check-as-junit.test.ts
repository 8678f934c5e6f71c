import { expect, test } from "vitest";
import { checkAsJUnit } from "../../../src-core/present/junit/check-as-junit.ts";
import { sampleLines, sampleResult } from "./sample-result.ts";

const clock = `  <testsuite name="port/clock.c" tests="2" failures="1" errors="0" time="0.000">
    <testcase classname="check" name="read" time="0.000"/>
    <testcase classname="ps2" name="ps2/request-hold-short" time="0.000">
      <failure type="error" message="the clock is held for 60 us">port/clock.c:3:12 error: the clock is held for 60 us
found 60 us
limit at least 100 us
source A timing table
fix Hold the clock for 100 us</failure>
    </testcase>
  </testsuite>`;

const read = `    <testcase classname="check" name="read" time="0.000">
      <system-out>port/uart.c:2:1 not understood, so not checked: no such register</system-out>
    </testcase>`;

const warning = "port/uart.c:2:9 warning: the baud is off";

/** Typed by hand from the elements of the schema known as junit-10.xsd, from memory. */
const document = (suites: readonly string[]) =>
  `<?xml version="1.0" encoding="UTF-8"?>\n<testsuites>\n${suites.join("\n")}\n</testsuites>\n`;

test("a suite per file, a case per rule; what does not fail the check is output", () => {
  const uart = `  <testsuite name="port/uart.c" tests="2" failures="0" errors="0" time="0.000">
${read}
    <testcase classname="serial" name="serial/baud-error" time="0.000">
      <system-out>${warning}</system-out>
    </testcase>
  </testsuite>`;
  expect(checkAsJUnit(sampleResult, sampleLines, new Set(["error"]))).toBe(document([clock, uart]));
});

test("where warnings fail the check, they fail their case", () => {
  const uart = `  <testsuite name="port/uart.c" tests="2" failures="1" errors="0" time="0.000">
${read}
    <testcase classname="serial" name="serial/baud-error" time="0.000">
      <failure type="warning" message="the baud is off">${warning}</failure>
    </testcase>
  </testsuite>`;
  expect(checkAsJUnit(sampleResult, sampleLines, new Set(["error", "warning"]))).toBe(
    document([clock, uart]),
  );
});
