import { expect, test } from "vitest";
import { cLibrary } from "./library-target.ts";

test("strncpy fills up with zeros and ends no text that is too long (C11 7.24.2.4p2, p3)", async () => {
  const target = await cLibrary();
  const to = target.place("########");
  expect(target.call("strncpy", to, "ab", 5)).toBe(to);
  expect(target.bytes(to, 6)).toEqual([0x61, 0x62, 0, 0, 0, 0x23]);
  target.call("strncpy", to, "mouse", 3);
  expect(target.bytes(to, 4)).toEqual([0x6d, 0x6f, 0x75, 0]);
});

test("strncat appends at most so many characters and a zero (C11 7.24.3.2p2)", async () => {
  const target = await cLibrary();
  const to = target.room(20);
  target.call("strcpy", to, "left");
  target.call("strncat", to, " right", 3);
  expect(target.text(to)).toBe("left ri");
  target.call("strcat", to, "!");
  expect(target.text(to)).toBe("left ri!");
});

test("strlcpy and strlcat give the length they wanted (avr-libc manual, string.h)", async () => {
  const target = await cLibrary();
  const to = target.room(20);
  expect(target.call("strlcpy", to, "mouse", 4)).toBe(5);
  expect(target.text(to)).toBe("mou");
  expect(target.call("strlcat", to, "se two", 8)).toBe(9);
  expect(target.text(to)).toBe("mouse t");
});

test("memmove copies as if through a buffer (C11 7.24.2.2p2)", async () => {
  const target = await cLibrary();
  const text = target.place("abcdef");
  target.call("memmove", text + 2, text, 4);
  expect(target.text(text)).toBe("ababcd");
  target.call("memmove", text, text + 1, 5);
  expect(target.text(text)).toBe("babcdd");
});

test("memset keeps the value as an unsigned char (C11 7.24.6.1p2)", async () => {
  const target = await cLibrary();
  const block = target.room(4);
  target.call("memset", block, -2, 3);
  expect(target.bytes(block, 4)).toEqual([0xfe, 0xfe, 0xfe, 0]);
});

test("searches find the place, the terminating zero too, or nothing (C11 7.24.5)", async () => {
  const target = await cLibrary();
  const text = target.place("a,b,c");
  expect(target.call("strchr", text, 0x2c)).toBe(text + 1);
  expect(target.call("strrchr", text, 0x2c)).toBe(text + 3);
  expect(target.call("strchr", text, 0)).toBe(text + 5);
  expect(target.call("strchr", text, 0x78)).toBe(0);
  expect(target.call("strstr", text, "b,")).toBe(text + 2);
  expect(target.call("strstr", text, "")).toBe(text);
  expect(target.call("strstr", text, "x")).toBe(0);
  expect(target.call("memchr", text, 0x63, 5)).toBe(text + 4);
  expect(target.call("memchr", text, 0x63, 4)).toBe(0);
});

test("strtok takes the words of the standard's example one by one (C11 7.24.5.8p8)", async () => {
  const target = await cLibrary();
  const text = target.place("?a???b,,,#c");
  const word = (from: number, separators: string) => {
    const at = Number(target.call("strtok", from, separators));
    return at === 0 ? undefined : target.text(at);
  };
  expect([word(text, "?"), word(0, ","), word(0, "#,"), word(0, "?")]).toEqual(["a", "??b", "c", undefined]);
});

test("strtok_r keeps its place where it is told (avr-libc manual, string.h)", async () => {
  const target = await cLibrary();
  const state = target.room(2);
  const first = Number(target.call("strtok_r", "left right", " ", state));
  const second = Number(target.call("strtok_r", 0, " ", state));
  expect([target.text(first), target.text(second)]).toEqual(["left", "right"]);
  expect(target.call("strtok_r", 0, " ", state)).toBe(0);
});

test("functions on program memory do what the others do (avr-libc manual, avr/pgmspace.h)", async () => {
  const target = await cLibrary();
  const to = target.room(10);
  expect(target.call("strlen_P", "mouse")).toBe(5);
  expect(target.call("strcpy_P", to, "mouse")).toBe(to);
  expect(target.text(to)).toBe("mouse");
  expect(target.call("strcmp_P", to, "mouse")).toBe(0);
  expect(target.call("memcpy_P", to, "two", 3)).toBe(to);
  expect(target.text(to)).toBe("twose");
});

test("strsep gives empty words as well (avr-libc manual, string.h)", async () => {
  const target = await cLibrary();
  const text = target.place("a,,b");
  const state = target.room(2);
  target.memory.writeByte(state, text & 0xff);
  target.memory.writeByte(state + 1, text >> 8);
  const words = [1, 2, 3].map(() => target.text(Number(target.call("strsep", state, ","))));
  expect(words).toEqual(["a", "", "b"]);
  expect(target.call("strsep", state, ",")).toBe(0);
});

test("texts changed where they stand, and places found in them (avr-libc manual, string.h)", async () => {
  const target = await cLibrary();
  const text = target.place("Mouse 1");
  expect(target.call("strupr", text)).toBe(text);
  expect(target.text(text)).toBe("MOUSE 1");
  target.call("strlwr", text);
  target.call("strrev", text);
  expect(target.text(text)).toBe("1 esuom");
  expect(target.call("strpbrk", text, "xs")).toBe(text + 3);
  expect(target.call("strcasestr", text, "ESU")).toBe(text + 2);
});
