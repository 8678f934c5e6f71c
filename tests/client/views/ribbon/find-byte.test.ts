import { describe, expect, test } from "vitest";
import { byteOf, findByte } from "../../../../client/views/ribbon/find-byte.ts";
import type { CarriedByte } from "../../../../server/language-server/client-messages/runs.ts";

test.each([
  ["f4", 0xf4],
  ["0xF4", 0xf4],
  [" 4D ", 0x4d],
  ["8", 8],
  ["", undefined],
  ["0x", undefined],
  ["1f4", undefined],
  ["g4", undefined],
])("%j is %s", (text, byte) => expect(byteOf(text)).toBe(byte));

describe("search", () => {
  const at = (from: number, byte: number): CarriedByte => ({ from, to: from + 1, byte, lane: "mouse" });
  const bytes = [at(10, 0xf4), at(20, 0xfa), at(30, 0xf4)];

  test("the next after a moment, the last before it, around the ends", () => {
    expect(findByte(bytes, 0xf4, 0, "next")?.from).toBe(10);
    expect(findByte(bytes, 0xf4, 10, "next")?.from).toBe(30);
    expect(findByte(bytes, 0xf4, 30, "next")?.from).toBe(10);
    expect(findByte(bytes, 0xf4, 30, "previous")?.from).toBe(10);
    expect(findByte(bytes, 0xf4, 10, "previous")?.from).toBe(30);
    expect(findByte(bytes, 0xee, 0, "next")).toBeUndefined();
  });
});
