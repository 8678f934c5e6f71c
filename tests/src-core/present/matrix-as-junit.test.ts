import { expect, test } from "vitest";
import { matricesAsJUnit } from "../../../src-core/present/junit/matrix-as-junit.ts";
import { attributes, textOf } from "../../../src-core/present/xml.ts";
import { matrixLines, sampleMatrix } from "./sample-matrix.ts";

/** Nine runs of 1.5 s and one that was not run; typed by hand from the elements that the schema has. */
const expected = `<?xml version="1.0" encoding="UTF-8"?>
<testsuites>
  <testsuite name="quay" tests="10" failures="6" errors="1" time="13.500">
    <testcase classname="plain.old" name="nudge" time="1.500"/>
    <testcase classname="plain.old" name="click" time="1.500"/>
    <testcase classname="plain.hurried" name="nudge" time="1.500">
      <failure type="ps2/request-hold-short" message="the clock is low for &quot;60 us&quot; &amp; too short">quay/ps2.c:3:7
first at 0.512 s
found 60 us
limit at least 100 us
source A timing table</failure>
    </testcase>
    <testcase classname="plain.hurried" name="click" time="1.500">
      <failure type="ps2/request-hold-short" message="the clock is low for &quot;60 us&quot; &amp; too short">quay/ps2.c:3:7
first at 0.512 s
found 60 us
limit at least 100 us
source A timing table</failure>
    </testcase>
    <testcase classname="late.old" name="nudge" time="1.500"/>
    <testcase classname="late.old" name="click" time="1.500">
      <failure type="report/counts-lost" message="counts are lost">first at 1.000 s</failure>
    </testcase>
    <testcase classname="late.hurried" name="nudge" time="1.500">
      <failure type="stopped" message="the code stopped: main returned">quay/ps2.c:3:7</failure>
    </testcase>
    <testcase classname="late.hurried" name="click" time="1.500">
      <failure type="ps2/request-hold-short" message="the clock is low for &quot;60 us&quot; &amp; too short">quay/ps2.c:3:7
first at 0.512 s
found 60 us
limit at least 100 us
source A timing table</failure>
    </testcase>
    <testcase classname="wheel.old" name="nudge" time="0.000">
      <error type="not-run" message="the cell could not be run: no memory"></error>
    </testcase>
    <testcase classname="wheel.old" name="click" time="1.500">
      <failure type="never-began" message="the stroke never began: mouse and PC were not both ready"></failure>
    </testcase>
  </testsuite>
</testsuites>
`;

test("one case for each cell and stroke", () => {
  expect(matricesAsJUnit([{ project: "quay", result: sampleMatrix }], matrixLines)).toBe(expected);
});

test("what XML 1.0 cannot hold (2.2) or would change (2.4, 3.3.3) is written so that it arrives", () => {
  expect(textOf("a<b>&\u0001\ud800\u{1f600}")).toBe("a&lt;b&gt;&amp;\ufffd\ufffd\u{1f600}");
  expect(attributes({ a: 'x"\n\ty', b: 2 })).toBe('a="x&quot;&#10;&#9;y" b="2"');
});
