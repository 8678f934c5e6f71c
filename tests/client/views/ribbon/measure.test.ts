import { expect, test } from "vitest";
import {
  type Measure,
  measuredByKey,
  measuredWith,
  measureInWords,
} from "../../../../client/views/ribbon/measure.ts";
import type { Item } from "../../../../client/views/ribbon/rows.ts";

const us = 1e6;
const ms = 1e9;

const item = (row: number, from: number, to: number): Item => ({
  row,
  from,
  to,
  words: "",
  place: undefined,
  isEdge: from === to,
});
const frame = item(1, 100, 180);
const later = item(1, 400, 480);
const edge = item(0, 300, 300);

/** From and to after each press of the key, with these chosen. */
function pressedOn(...items: readonly Item[]): readonly (readonly [number, number | undefined])[] {
  let measure: Measure | undefined;
  return items.map((each) => {
    measure = measuredByKey(measure, { ...each });
    return [measure.from, measure.to] as const;
  });
}

test("by key, a frame is measured from its begin to its end, and from its end on", () => {
  expect(pressedOn(frame, frame, frame, later)).toEqual([
    [100, undefined],
    [100, 180],
    [180, undefined],
    [180, 400],
  ]);
});

test("by key, a measurement ends at the begin of another frame, then at its end, and then begins anew", () => {
  expect(pressedOn(frame, later, later, later)).toEqual([
    [100, undefined],
    [100, 400],
    [100, 480],
    [400, undefined],
  ]);
});

test("an edge has one moment: after a measurement that ended there another begins there", () => {
  expect(pressedOn(frame, edge, edge)).toEqual([
    [100, undefined],
    [100, 300],
    [300, undefined],
  ]);
});

test("by pointer, from the first edge to the second, then anew", () => {
  const begun = measuredWith(undefined, item(0, 11 * ms, 11 * ms), 0);
  expect(begun).toMatchObject({ from: 11 * ms, to: undefined });
  const before = 11 * ms - 80 * us;
  const whole = measuredWith(begun, item(0, before, before), 0);
  expect(whole).toMatchObject({ from: 11 * ms, to: before });
  // 80 us are a clock of 12.5 kHz.
  expect(measureInWords(whole)).toBe("80 us from 10.92 ms to 11 ms; as a period 12.5 kHz");
  expect(measuredWith(whole, edge, 0)).toMatchObject({ from: 300, to: undefined });
});

test("by pointer, of what lasts, the end that is nearer", () => {
  expect(measuredWith(undefined, frame, 170).from).toBe(180);
  expect(measuredWith(undefined, frame, 110).from).toBe(100);
});
