import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { ScratchFolder } from "../scratch-folder.ts";
import { edgewise } from "./run-edgewise.ts";

test("notes for a firmware without any are printed, and no file is changed", () => {
  const text = `#define F_CPU 16000000UL
#include <avr/io.h>
int main(void) { UBRR0 = 832; UCSR0B = _BV(TXEN0); for (;;) UDR0 = 0; }
`;
  const folder = new ScratchFolder({
    "main.c": text,
    "edgewise.json": '{ "board": { "chip": "atmega328p" } }',
  });
  try {
    const { status, stdout, stderr } = edgewise(folder.path, "notes");
    expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
    expect(stdout).toContain("main.c\n\n  // @wire serial uart=0\n  1 | #define F_CPU 16000000UL\n");
    expect(stdout).toContain("as in @wire serial rts=4");
    expect(readFileSync(join(folder.path, "main.c"), "utf8")).toBe(text);
  } finally {
    folder.remove();
  }
});

test("one with its notes needs none", () => {
  const { status, stdout } = edgewise(".", "notes", "sample-workspace/ferry-c");
  expect(status).toBe(0);
  expect(stdout).toBe("sample-workspace/ferry-c\n\n  No note to add: what the code tells is said.\n");
});
