import { describe, expect, test } from "vitest";
import { mice } from "../../../../src-core/bench/mice/profiles.ts";
import { strokeLength, strokeSum } from "../../../../src-core/bench/strokes/stroke.ts";
import { sampleStrokes } from "../../../../src-core/bench/strokes/strokes.ts";
import { ms } from "../../../../src-core/bench/time/time.ts";
import type { HeardByte } from "./datasheet-host.ts";
import { hex, readyDesk } from "./desk.ts";

/** Three-byte reports taken apart as psm(4), "data packet", has them; -256 to 255 counts. */
function decoded(bytes: readonly number[]) {
  const sum = { x: 0, y: 0, buttons: [] as number[] };
  for (let at = 0; at + 2 < bytes.length; at += 3) {
    const [first = 0, x = 0, y = 0] = bytes.slice(at, at + 3);
    expect(first & 8, "the bit that is always 1").toBe(8);
    sum.x += (first & 16) === 0 ? x : x - 256;
    sum.y += (first & 32) === 0 ? y : y - 256;
    if (sum.buttons.at(-1) !== (first & 7)) sum.buttons.push(first & 7);
  }
  return sum;
}

/** What a host keeps that asks again (FE) after each byte with wrong parity is not modelled here: those mice are left out. */
const sound = mice.filter(
  ({ incident, disturbedByteEvery, glitch }) =>
    incident === undefined && disturbedByteEvery === 0 && glitch === undefined,
);

describe("what the hand does is what arrives or is told as lost", () => {
  test.each(sound.map(({ name }) => name))("%s, every sample stroke", (name) => {
    for (const stroke of sampleStrokes) {
      const { mouse, host, ask, pass } = readyDesk(name);
      while (hex(ask(0xf4)) !== "FA") pass(1);
      host.forget();
      mouse.perform(stroke);
      pass(strokeLength(stroke) / ms + 60);
      expect(host.heard.every((each: HeardByte) => each.sound)).toBe(true);
      const { x, y, buttons } = decoded(host.bytes());
      const { right, down } = strokeSum(stroke);
      const lost = { x: 0, y: 0 };
      for (const report of mouse.record.reports) {
        lost.x += report.lost.x;
        lost.y += report.lost.y;
        expect(report.sentAt).toBeDefined();
      }
      expect([x + lost.x, y + lost.y], stroke.name).toEqual([right, 0 - down]);
      expect(lost.x !== 0 || lost.y !== 0, stroke.name).toBe(stroke.name === "flick");
      // Bits of the first byte: 1 left, 2 right, 4 middle.
      const clicks: Readonly<Record<string, readonly number[]>> = {
        click: [1, 0, 2, 0, 4, 0],
        "double-click": [1, 0, 1, 0],
        drag: [1, 0],
      };
      const expected = clicks[stroke.name];
      if (expected !== undefined) expect(buttons, stroke.name).toEqual(expected);
    }
  });
});
