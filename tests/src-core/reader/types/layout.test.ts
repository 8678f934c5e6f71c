import { describe, expect, test } from "vitest";
import { basicTypes } from "../../../../src-core/reader/types/basic-types.ts";
import { avrModel, ilp32Model } from "../../../../src-core/reader/types/data-models.ts";
import { arrayOf } from "../../../../src-core/reader/types/derive.ts";
import {
  layoutRecord,
  type MemberDraft,
  type RecordDraft,
} from "../../../../src-core/reader/types/layout.ts";
import type { Type } from "../../../../src-core/reader/types/types.ts";

const avr = basicTypes(avrModel);
const wide = basicTypes(ilp32Model);

function member(name: string | undefined, type: Type, bitWidth?: number): MemberDraft {
  return { name, type, bitWidth, packed: false, mutable: false };
}

function record(members: readonly MemberDraft[], more: Partial<RecordDraft> = {}): RecordDraft {
  return {
    keyword: "struct",
    language: "c",
    bases: [],
    members,
    packed: false,
    aligned: 1,
    ownTable: false,
    ...more,
  };
}

const offsets = (layout: ReturnType<typeof layoutRecord>) => layout.fields.map((field) => field.bitOffset);

describe("AVR aligns nothing (wiki page avr-gcc, Type Layout)", () => {
  test("members follow each other byte by byte", () => {
    const layout = layoutRecord(
      record([member("a", avr.char), member("b", avr.long), member("c", avr.int), member("d", avr.char)]),
      avrModel,
    );
    expect(offsets(layout)).toEqual([0, 8, 40, 56]);
    expect(layout.size).toBe(8);
  });

  // Itanium C++ ABI, 2.2: a reference is laid out as a pointer.
  test("a reference takes the room of a pointer, whatever it refers to", () => {
    const to = (type: Type): Type => ({ kind: "reference", to: type, rvalue: false });
    const members = [member("a", to(avr.char)), member("b", to(avr.long)), member("c", avr.char)];
    expect(offsets(layoutRecord(record(members, { language: "c++" }), avrModel))).toEqual([0, 16, 32]);
    expect(layoutRecord(record(members, { language: "c++" }), ilp32Model).size).toBe(12);
  });

  test("bit-fields begin at the least significant bit and share a byte", () => {
    const layout = layoutRecord(
      record([
        member("left", avr.unsignedChar, 1),
        member("right", avr.unsignedChar, 1),
        member("x", avr.unsignedChar, 6),
        member("y", avr.unsignedChar, 3),
      ]),
      avrModel,
    );
    expect(offsets(layout)).toEqual([0, 1, 2, 8]);
    expect(layout.size).toBe(2);
  });
});

describe("natural alignment (Procedure Call Standard for the Arm Architecture, 5.3)", () => {
  test("members and size are padded", () => {
    const layout = layoutRecord(
      record([member("a", wide.char), member("b", wide.int), member("c", wide.char)]),
      ilp32Model,
    );
    expect(offsets(layout)).toEqual([0, 32, 64]);
    expect(layout).toMatchObject({ size: 12, alignment: 4 });
  });

  test("packed takes the padding away", () => {
    const layout = layoutRecord(
      record([member("a", wide.char), member("b", wide.int), member("c", wide.char)], { packed: true }),
      ilp32Model,
    );
    expect(offsets(layout)).toEqual([0, 8, 40]);
    expect(layout).toMatchObject({ size: 6, alignment: 1 });
  });

  test("a double is aligned to 8", () => {
    const layout = layoutRecord(record([member("a", wide.char), member("b", wide.double)]), ilp32Model);
    expect(layout).toMatchObject({ size: 16, alignment: 8 });
  });
});

test("members of a union start at 0 and the widest gives the size (C11 6.7.2.1p16)", () => {
  const layout = layoutRecord(
    record([member("word", avr.int), member("bytes", arrayOf(avr.char, 3))], { keyword: "union" }),
    avrModel,
  );
  expect(offsets(layout)).toEqual([0, 0]);
  expect(layout.size).toBe(3);
});

test("a width of 0 ends the unit (C11 6.7.2.1p12); unnamed members are no fields", () => {
  const layout = layoutRecord(
    record([
      member("a", avr.unsignedChar, 3),
      member(undefined, avr.unsignedChar, 0),
      member("b", avr.unsignedChar, 3),
      member(undefined, avr.unsignedChar, 2),
      member("c", avr.unsignedChar, 1),
    ]),
    avrModel,
  );
  expect(layout.fields.map((field) => [field.name, field.bitOffset])).toEqual([
    ["a", 0],
    ["b", 8],
    ["c", 13],
  ]);
});

test("an empty class has a size of 1 in C++ (C++11 9p4), 0 in GNU C", () => {
  expect(layoutRecord(record([], { language: "c++" }), avrModel).size).toBe(1);
  expect(layoutRecord(record([]), avrModel).size).toBe(0);
});
