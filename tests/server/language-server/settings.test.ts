import { expect, test } from "vitest";
import { defaultSettings, settingsFrom, wantsStatus } from "../../../server/language-server/settings.ts";

test("a delay that a client sends is taken over", () => {
  expect(settingsFrom({ edgewise: { checkDelay: 40 } })).toMatchObject({ checkDelay: 40 });
});

test.each([
  [undefined],
  [null],
  ["x"],
  [{}],
  [{ edgewise: null }],
  [{ edgewise: { checkDelay: "40" } }],
  [{ edgewise: { checkDelay: -1 } }],
  [{ edgewise: { checkDelay: Number.NaN } }],
])("%j keeps the defaults", (sent) => {
  expect(settingsFrom(sent)).toEqual(defaultSettings);
});

test("status is told only to clients that ask for it", () => {
  expect([{ status: true }, { status: 1 }, {}, null, undefined].map(wantsStatus)).toEqual([
    true,
    false,
    false,
    false,
    false,
  ]);
});

test("hints are shown where a client asks for them, and not before", () => {
  expect(settingsFrom({ edgewise: {} }).inlayHints).toBe(false);
  expect(settingsFrom({ edgewise: { inlayHints: "yes" } }).inlayHints).toBe(false);
  expect(settingsFrom({ edgewise: { inlayHints: true } }).inlayHints).toBe(true);
});
