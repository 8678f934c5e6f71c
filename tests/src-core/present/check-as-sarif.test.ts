import { expect, test } from "vitest";
import { artifactLocation } from "../../../src-core/present/sarif/artifact-location.ts";
import { checkAsSarif } from "../../../src-core/present/sarif/check-as-sarif.ts";
import { fnv1a } from "../../../src-core/present/sarif/fingerprint.ts";
import { sampleLines, sampleResult } from "./sample-result.ts";

const log = JSON.parse(
  checkAsSarif(sampleResult, sampleLines, {
    version: "1.2.3",
    rules: [
      {
        id: "ps2/request-hold-short",
        title: "A clock held too short",
        severity: "error",
        why: "The mouse does not listen.",
        source: "A timing table",
      },
    ],
    pageUriOf: (rule) => `file:///package/${rule}.md`,
    locationOf: (file) => artifactLocation(file, () => "file:///outside"),
  }),
);

const inClock = { uri: "port/clock.c", uriBaseId: "WORKING_FOLDER" };
const inUart = { uri: "port/uart.c", uriBaseId: "WORKING_FOLDER" };

// Property names, their nesting and which of them are required: SARIF 2.1.0 (OASIS), sections in brackets, from memory.
test("the log and its run have what they must have", () => {
  // 3.13.2, 3.13.4: `version` and `runs`; 3.14.6: `tool`; 3.18.2, 3.19.8: its `driver` with a `name`.
  expect(Object.keys(log)).toEqual(["$schema", "version", "runs"]);
  expect(log.version).toBe("2.1.0");
  const [run, ...more] = log.runs;
  expect(more).toEqual([]);
  expect(run.tool.driver).toMatchObject({ name: "Edgewise", version: "1.2.3", semanticVersion: "1.2.3" });
  // 3.14.17: what columns count; 3.20.14: `executionSuccessful`.
  expect(run.columnKind).toBe("utf16CodeUnits");
  expect(run.invocations[0].executionSuccessful).toBe(true);
  expect(run.artifacts).toEqual([{ location: inClock }, { location: inUart }]);
  expect(run.originalUriBaseIds).toHaveProperty("WORKING_FOLDER");
});

test("a rule has texts, a level and a page (3.49)", () => {
  expect(log.runs[0].tool.driver.rules).toEqual([
    {
      id: "ps2/request-hold-short",
      shortDescription: { text: "A clock held too short." },
      fullDescription: { text: "The mouse does not listen." },
      help: { text: "The mouse does not listen.\n\nSource: A timing table" },
      helpUri: "file:///package/ps2/request-hold-short.md",
      defaultConfiguration: { level: "error" },
    },
  ]);
});

test("a result has level, place, fix and a fingerprint (3.27)", () => {
  const [full, bare] = log.runs[0].results;
  const region = { startLine: 3, startColumn: 12, endLine: 3, endColumn: 14 };
  expect(full).toEqual({
    ruleId: "ps2/request-hold-short",
    ruleIndex: 0,
    level: "error",
    message: { text: "the clock is held for 60 us" },
    locations: [{ physicalLocation: { artifactLocation: inClock, region } }],
    relatedLocations: [
      {
        id: 1,
        physicalLocation: {
          artifactLocation: inUart,
          region: { startLine: 1, startColumn: 9, endLine: 1, endColumn: 16 },
        },
        message: { text: "another place" },
      },
    ],
    partialFingerprints: { "ruleFileLineText/v1": expect.stringMatching(/^[0-9a-f]{16}$/) },
    fixes: [
      {
        description: { text: "Hold the clock for 100 us" },
        artifactChanges: [
          {
            artifactLocation: inClock,
            replacements: [{ deletedRegion: region, insertedContent: { text: "100" } }],
          },
        ],
      },
    ],
    properties: { measured: "60 us", limit: "at least 100 us", source: "A timing table" },
  });
  // A rule that is not listed has no index (3.27.6).
  expect(bare).toEqual({
    ruleId: "serial/baud-error",
    level: "warning",
    message: { text: "the baud is off" },
    locations: [
      {
        physicalLocation: {
          artifactLocation: inUart,
          region: { startLine: 2, startColumn: 9, endLine: 2, endColumn: 16 },
        },
      },
    ],
    partialFingerprints: { "ruleFileLineText/v1": expect.stringMatching(/^[0-9a-f]{16}$/) },
  });
});

test("what was not understood is a notification of the run (3.20.21)", () => {
  expect(log.runs[0].invocations[0].toolExecutionNotifications).toEqual([
    {
      level: "note",
      message: { text: "no such register" },
      locations: [
        {
          physicalLocation: {
            artifactLocation: inUart,
            region: { startLine: 2, startColumn: 1, endLine: 2, endColumn: 6 },
          },
        },
      ],
    },
  ]);
});

// RFC 3986, 2.1 and 4.2: what is not unreserved is percent-encoded; a colon would make a scheme of a first segment.
test("a file inside the working folder is a relative reference, one outside an absolute URI", () => {
  const outside = (file: string) => `file:///at/${file}`;
  expect(artifactLocation("a b/ü:1.c", outside)).toEqual({
    uri: "a%20b/%C3%BC%3A1.c",
    uriBaseId: "WORKING_FOLDER",
  });
  expect(artifactLocation("../x.c", outside)).toEqual({ uri: "file:///at/../x.c" });
});

// Values of the draft's own test program (draft-eastlake-fnv), from memory.
test.each([
  ["", 0xcbf29ce484222325n],
  ["a", 0xaf63dc4c8601ec8cn],
  ["foobar", 0x85944171f73967e8n],
])("FNV-1a of %j", (text, hash) => {
  expect(fnv1a(text)).toBe(hash);
});
