import { expect, test } from "vitest";
import { decodeText } from "../../../server/files/decode-text.ts";

const bytes = (...values: number[]) => Uint8Array.from(values);

// Byte sequences: The Unicode Standard, chapter 3.10 (encoding schemes, byte order marks) and table 3-7.
test.each([
  ["UTF-8", bytes(0xc2, 0xb5, 0x73), "\u00b5s"],
  ["UTF-8 with a mark", bytes(0xef, 0xbb, 0xbf, 0x61), "a"],
  ["UTF-16 little end first", bytes(0xff, 0xfe, 0x61, 0x00), "a"],
  ["UTF-16 big end first", bytes(0xfe, 0xff, 0x00, 0x61), "a"],
  ["a lone byte of another encoding", bytes(0x61, 0xb5, 0x62), "a\ufffdb"],
  ["nothing", bytes(), ""],
])("%s becomes text", (_, given, text) => {
  expect(decodeText(given)).toBe(text);
});
