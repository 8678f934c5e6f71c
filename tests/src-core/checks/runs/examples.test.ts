import { describe, expect, it } from "vitest";
import { rules } from "../../../../src-core/checks/registry.ts";
import { firmwareWith, rightFirmware } from "../../../../src-core/checks/runs/right-firmware.ts";
import { findingsIn } from "../harness.ts";

const ofRuns = rules.filter((rule) => rule.judge !== undefined);

/** What the verdicts of the bench fail for: `fail({ rule: ... })` and `measure...(..., rule, ...)` of bench/verdicts. */
const ofVerdicts = [
  "board/shared-not-atomic",
  "ps2/ack-ignored",
  "ps2/clock-missed",
  "ps2/line-driven-high",
  "ps2/no-pullup",
  "ps2/packet-resync",
  "ps2/parity-unchecked",
  "ps2/parity-wrong",
  "ps2/reply-timeout-short",
  "ps2/reporting-not-enabled",
  "ps2/request-hold-short",
  "ps2/reset-wait-short",
  "ps2/sample-edge",
  "ps2/wait-forever",
  "report/counts-lost",
  "report/layout",
  "report/y-direction",
  "serial/bit-time",
  "serial/blocks-receive",
  "serial/control-line-ignored",
  "serial/ident-late",
  "serial/ident-missing",
  "serial/ident-wrong",
  "serial/idle-level",
  "serial/throughput",
];

describe("rules that look at whole runs", () => {
  it("are all that verdicts fail for", () => {
    expect(ofRuns.map(({ id }) => id).toSorted()).toEqual(ofVerdicts);
  });

  it("find nothing in the right firmware that their wrong examples are made of", () => {
    expect(findingsIn(rightFirmware)).toEqual([]);
  });

  it.each(ofRuns.map((rule) => [rule.id, rule] as const))(
    "%s finds its wrong example, and nothing else is wrong there",
    (id, rule) => {
      const found = findingsIn(rule.wrong).map((finding) => finding.rule);
      expect([...new Set(found)]).toEqual([id]);
    },
  );

  it("say what was measured, what the limit is and in which run it was seen first", () => {
    const wrong = firmwareWith("#define REPLY_MS 30", "#define REPLY_MS 5");
    const [finding, ...more] = findingsIn(wrong).filter(({ rule }) => rule === "ps2/reply-timeout-short");
    expect(more).toEqual([]);
    // At least 25 ms: data sheet of the EM84502, sections D vi and vii.
    expect(finding?.limit).toMatchObject({ atLeast: 25, unit: "ms" });
    expect(finding?.measured?.unit).toBe("ms");
    expect(finding?.message).toContain("mouse answers-late");
  });
});
