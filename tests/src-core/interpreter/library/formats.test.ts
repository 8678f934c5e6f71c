import { expect, test } from "vitest";
import { cLibrary } from "./library-target.ts";

/** A text where a `va_list` points: arguments one after the other, as avr-gcc passes them. */
const listed = [0xfe, 0xff, 0x70, 0x11, 0x01, 0x00, 0x41, 0x00];

test("conversions of the manual: flags, width, precision and length (avr-libc manual, stdio.h)", async () => {
  const target = await cLibrary();
  const made = (format: string, ...given: readonly (number | string)[]) => {
    const to = target.room(80);
    const count = target.call("sprintf", to, format, ...given);
    expect(count).toBe(target.text(to).length);
    return target.text(to);
  };
  expect(made("x=%d y=%4d.", -3, 42)).toBe("x=-3 y=  42.");
  expect(made("%02x%02X", 0x0a, 0xbe)).toBe("0aBE");
  expect(made("%#x %#o", 255, 8)).toBe("0xff 010");
  expect(made("%u", -1)).toBe("65535");
  expect(made("%lu", -1)).toBe("4294967295");
  expect(made("%-6s|%.3s|%c", "ab", "mouse", 0x4d)).toBe("ab    |mou|M");
  expect(made("%p", 0x1f2)).toBe("0x1f2");
  expect(made("100%%")).toBe("100%");
});

test("the default vfprintf shows ? for a double, and ends at * and ll (avr-libc manual, stdio.h)", async () => {
  const target = await cLibrary();
  const to = target.room(40);
  target.call("sprintf", to, "%5f|%d", 1.5, 7);
  expect(target.text(to)).toBe("    ?|7");
  target.call("sprintf", to, "a %lld b", 1n);
  expect(target.text(to)).toBe("a ");
  target.call("sprintf", to, "a %*d b", 5, 1);
  expect(target.text(to)).toBe("a ");
});

test("snprintf writes what fits and gives the whole length (C11 7.21.6.5)", async () => {
  const target = await cLibrary();
  const to = target.place("########");
  expect(target.call("snprintf", to, 4, "%d", 12345)).toBe(5);
  expect(target.text(to)).toBe("123");
  expect(target.call("snprintf", 0, 0, "%d", 12345)).toBe(5);
});

test("vsprintf takes its arguments from a list (C11 7.21.6.13; sizes of avr-gcc)", async () => {
  const target = await cLibrary();
  const list = target.room(listed.length);
  listed.forEach((byte, index) => {
    target.memory.writeByte(list + index, byte);
  });
  const to = target.room(40);
  target.call("vsprintf", to, "%d %ld %c", list);
  expect(target.text(to)).toBe("-2 70000 A");
});

/** A stream of FDEV_SETUP_STREAM(put, get, mode): avr-libc's struct __file. */
function stream(target: Awaited<ReturnType<typeof cLibrary>>, mode: number): number {
  const at = target.room(14);
  target.memory.writeByte(at + 3, mode);
  target.memory.writeByte(at + 8, 0x34);
  target.memory.writeByte(at + 9, 0x12);
  target.memory.writeByte(at + 10, 0x78);
  target.memory.writeByte(at + 11, 0x56);
  return at;
}

test("printf and puts call the stream's function for each character (avr-libc manual, stdio.h)", async () => {
  const target = await cLibrary();
  const file = stream(target, 2);
  const pointer = target.room(2);
  target.memory.writeByte(pointer, file & 0xff);
  target.memory.writeByte(pointer + 1, file >> 8);
  target.globals.set("stdout", pointer);
  let sent = "";
  target.callPointer = (put, [character, to]) => {
    expect([put, to]).toEqual([0x1234, file]);
    sent += String.fromCharCode(Number(character));
    return 0;
  };
  expect(target.call("printf", "%d!", 42)).toBe(3);
  expect(target.call("puts", "mouse")).toBe(0);
  expect(target.call("putchar", 0x41)).toBe(0x41);
  expect(target.call("fputs", "end", file)).toBe(0);
  expect(target.call("fprintf", file, "%s", ".")).toBe(1);
  expect(sent).toBe("42!mouse\nAend.");
});

test("a stream that is not open for writing, or is not there, gives EOF (C11 7.21.7.3p3)", async () => {
  const target = await cLibrary();
  expect(target.call("fputc", 0x41, stream(target, 1))).toBe(-1);
  expect(target.call("puts", "mouse")).toBe(-1);
});

test("fgets reads a line with its end (C11 7.21.7.2)", async () => {
  const target = await cLibrary();
  const coming = [0x61, 0x62, 0x0a, 0x63];
  target.callPointer = (get) => {
    expect(get).toBe(0x5678);
    return coming.shift() ?? -2;
  };
  const file = stream(target, 1);
  const to = target.room(20);
  expect(target.call("fgets", to, 20, file)).toBe(to);
  expect(target.text(to)).toBe("ab\n");
  expect(target.call("fgetc", file)).toBe(0x63);
  expect(target.call("fgets", to, 20, file)).toBe(0);
});
