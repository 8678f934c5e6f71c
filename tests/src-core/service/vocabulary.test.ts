import { describe, expect, it } from "vitest";
import { mice } from "../../../src-core/bench/mice/profiles.ts";
import { pcProfiles } from "../../../src-core/bench/pcs/pc-profiles.ts";
import { sampleStrokes } from "../../../src-core/bench/strokes/strokes.ts";
import { vocabulary } from "../../../src-core/service/vocabulary.ts";

const names = (terms: readonly { readonly name: string }[]) => terms.map(({ name }) => name);

describe("what completion proposes for simulations", () => {
  it("every mouse, PC and stroke of the bench, with what it is for", () => {
    expect(names(vocabulary.mice)).toEqual(mice.map(({ name }) => name));
    expect(names(vocabulary.pcs)).toEqual(pcProfiles.map(({ name }) => name));
    expect(names(vocabulary.strokes)).toEqual(sampleStrokes.map(({ name }) => name));
    const documentation = new Map(
      [...vocabulary.mice, ...vocabulary.pcs].map((term) => [term.name, term.documentation]),
    );
    expect(documentation.get("clock-at-16-7-khz")).toContain("`ps2.clock-period`");
    expect(documentation.get("plug-and-play")).toMatch(/^\*.+\*$/);
  });
});

describe("what completion proposes for the serial line", () => {
  // Linux manual mouse(4), man-pages 6.03: seven data bits and one stop bit, eight data bits and two stop bits; a
  // receiver needs one of them.
  it("the formats of the serial layouts, the three-byte ones first", () => {
    expect(names(vocabulary.lineFormats)).toEqual(["7N1", "8N1"]);
  });

  // Linux manual mouse(4), man-pages 6.03: 1200 bits/sec. Faster rates: common practice, no source.
  it("the rate of every serial mouse first, then the faster ones", () => {
    expect(names(vocabulary.bauds)).toEqual(["1200", "2400", "4800", "9600"]);
  });
});
