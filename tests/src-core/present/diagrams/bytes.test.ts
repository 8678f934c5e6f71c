import { expect, test } from "vitest";
import { byteFromMouse, byteToMouse } from "../../../../src-core/present/diagrams/ps2-bytes.ts";
import { byteToPc } from "../../../../src-core/present/diagrams/serial-line.ts";
import type { Lane, WaveDiagram } from "../../../../src-core/present/diagrams/wave.ts";
import { waveSvg } from "../../../../src-core/present/diagrams/wave-svg.ts";

/** Level of a lane just before a time. */
function levelBefore({ steps }: Lane, time: number): number {
  return steps.filter(({ at }) => at < time).at(-1)?.level ?? -1;
}

/** Times at which a lane goes from 1 to 0, or from 0 to 1. */
function edges({ steps }: Lane, to: 0 | 1): readonly number[] {
  return steps.flatMap((step, index) =>
    step.level === to && steps[index - 1]?.level === 1 - to ? [step.at] : [],
  );
}

function lane({ lanes }: WaveDiagram, name: string): Lane {
  const found = lanes.find((each) => each.name === name);
  if (found === undefined) throw new Error(`no lane ${name}`);
  return found;
}

// The PS/2 Mouse/Keyboard Protocol, Device-to-Host: start 0, eight bits from the lowest, odd parity, stop 1; the host
// reads when the clock falls. FA is 1111 1010, six ones, so the parity bit is 1.
test("a byte from the mouse, read at each falling clock", () => {
  const diagram = byteFromMouse(0xfa);
  const falls = edges(lane(diagram, "clock"), 0);
  expect(falls.map((at) => levelBefore(lane(diagram, "data"), at))).toEqual([
    0, 0, 1, 0, 1, 1, 1, 1, 1, 1, 1,
  ]);
});

// The same document, Host-to-Device: the mouse reads when the clock is high, and pulls data low before the eleventh
// clock. F4 is 1111 0100, five ones, so the parity bit is 0.
test("a byte to the mouse, read at each rising clock, with the acknowledge at the last", () => {
  const diagram = byteToMouse(0xf4);
  const [release = 0, ...rises] = edges(lane(diagram, "clock"), 1);
  const data = lane(diagram, "data");
  expect(levelBefore(data, release)).toBe(0);
  expect(rises.map((at) => levelBefore(data, at))).toEqual([0, 0, 1, 0, 1, 1, 1, 1, 0, 1, 0]);
  expect(data.steps.find(({ driver }) => driver === "mouse")?.at).toBeLessThan(
    edges(lane(diagram, "clock"), 0).at(-1) ?? 0,
  );
});

// The same document: lines are driven low or let go.
test("nobody drives a PS/2 line high", () => {
  for (const { lanes } of [byteFromMouse(0xfa), byteToMouse(0xf4)])
    for (const { steps } of lanes)
      for (const { level, driver } of steps) expect(driver === "nobody").toBe(level === 1);
});

// mouse(4): M is 4D, seven data bits; RS-232 sends the lowest bit first. EIA/TIA-232-E, 2.1.3: mark is negative.
test("a byte to the PC is turned over by the shifter", () => {
  const diagram = byteToPc(0x4d, { dataBits: 7, parity: "none", stopBits: 1 });
  const middles = Array.from({ length: 9 }, (_, index) => 1.5 + index);
  const marks = [0, 1, 0, 1, 1, 0, 0, 1, 1];
  expect(middles.map((at) => levelBefore(lane(diagram, "pin"), at))).toEqual(marks);
  expect(middles.map((at) => levelBefore(lane(diagram, "RXD"), at))).toEqual(marks.map((mark) => 1 - mark));
});

test("a picture says in words what it shows, and lets no text break out of it", () => {
  const picture = waveSvg({ ...byteFromMouse(0xfa), title: "a < b & c", description: 'it\'s \u0001 "so"' });
  expect(picture).toContain('<title id="title">a &lt; b &amp; c</title>');
  expect(picture).toContain('<desc id="description">it\'s \ufffd "so"</desc>');
});
