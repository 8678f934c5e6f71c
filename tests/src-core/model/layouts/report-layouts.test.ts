import { describe, expect, test } from "vitest";
import { decodeReport } from "../../../../src-core/model/layouts/decode.ts";
import { encodeWholeReport } from "../../../../src-core/model/layouts/encode.ts";
import type { LayoutName } from "../../../../src-core/model/layouts/layout.ts";
import { synchronisation } from "../../../../src-core/model/layouts/synchronisation.ts";
import { movementRange, remainder } from "../../../../src-core/model/layouts/values.ts";
import { layoutNamed, layouts, reportLayouts } from "../../../../src-core/model/report-layouts.ts";

describe("fields of the layouts, in the words of notes", () => {
  test.each([
    ["two-button", "x y left right"],
    ["middle-button", "x y left right middle"],
    ["wheel", "x y left right middle wheel"],
    ["five-byte", "x y left right middle"],
    ["ps2-standard", "x y left right middle"],
    ["ps2-wheel", "x y left right middle wheel"],
    ["ps2-five-button", "x y left right middle wheel button4 button5"],
  ])("%s: %s", (name, fields) => {
    expect(layoutNamed(name)?.fields.join(" ")).toBe(fields);
  });

  test("no other layout", () => {
    expect(layoutNamed("four-button")).toBeUndefined();
    expect(reportLayouts).toHaveLength(7);
  });
});

describe("which way is plus", () => {
  test("mouse(4): dy positive means down in the three-byte layout, up on the five-byte line (dy is negated)", () => {
    const senses = (name: LayoutName) => layouts[name].movements.map(({ positive }) => positive);
    expect(senses("two-button")).toEqual(["right", "down"]);
    expect(senses("five-byte")).toEqual(["right", "up"]);
  });

  test("HT82M35X p. 3: PS/2 counts up to the right, up and towards the user", () => {
    expect(layouts["ps2-wheel"].movements.map(({ positive }) => positive)).toEqual([
      "right",
      "up",
      "towards the user",
    ]);
  });
});

describe("finding the first byte", () => {
  test.each([
    ["two-button", { mask: 0x40, value: 0x40, unambiguous: true }, "Linux sermouse.c: bit 6"],
    ["middle-button", { mask: 0x40, value: 0x40, unambiguous: true }, "Linux sermouse.c: bit 6"],
    ["wheel", { mask: 0x40, value: 0x40, unambiguous: true }, "Linux sermouse.c: bit 6"],
    ["five-byte", { mask: 0xf8, value: 0x80, unambiguous: false }, "FreeBSD moused.c: 80 after AND F8"],
    ["ps2-standard", { mask: 0x08, value: 0x08, unambiguous: false }, "psm(4): bit 3"],
    ["ps2-wheel", { mask: 0x08, value: 0x08, unambiguous: false }, "psm(4): bit 3"],
    ["ps2-five-button", { mask: 0x08, value: 0x08, unambiguous: false }, "psm(4): bit 3"],
  ] as const)("%s: %o, %s", (name, expected, _source) => {
    expect(synchronisation(layouts[name])).toEqual(expected);
  });
});

describe("what does not fit", () => {
  test("waits for the next report", () => {
    expect(remainder(layouts["two-button"], { x: 300, y: -300 })).toEqual({ x: 173, y: -172 });
    expect(remainder(layouts["five-byte"], { x: 300, y: 0 })).toEqual({ x: 46, y: 0 });
  });

  test("a five-byte report carries twice the movement", () => {
    const ranges = layouts["five-byte"].movements.map(movementRange);
    expect(ranges).toEqual([
      { min: -254, max: 254 },
      { min: -254, max: 254 },
    ]);
  });
});

describe("every movement of every layout comes back as it was sent", () => {
  for (const layout of reportLayouts) {
    test(layout.name, () => {
      for (const field of layout.movements) {
        const { min, max } = movementRange(field);
        for (let value = min; value <= max; value++) {
          const decoded = decodeReport(layout, encodeWholeReport(layout, { [field.name]: value }));
          expect(decoded).toMatchObject({ kind: "report", values: { [field.name]: value } });
        }
      }
    });
  }
});
