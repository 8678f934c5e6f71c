import { describe, expect, test } from "vitest";
import { IDENTIFICATION_WITH_BIT_7, identificationOf } from "../../../src-core/model/identification.ts";
import {
  checksumDigits,
  encodePlugAndPlayId,
  idFields,
  plugAndPlayChecksum,
} from "../../../src-core/model/plug-and-play-id.ts";

describe("identification bytes", () => {
  test("mouse(4): M, and 3 after it from a mouse with three buttons", () => {
    expect(identificationOf("two-button")?.sequences[0]).toEqual([0x4d]);
    expect(identificationOf("middle-button")?.sequences[0]).toEqual([0x4d, 0x33]);
  });

  test("EM84520 data sheet p. 3: MZ@ and three zeros from a wheel mouse", () => {
    expect(identificationOf("wheel")?.sequences[0]).toEqual([0x4d, 0x5a, 0x40, 0, 0, 0]);
  });

  test("five-byte: nothing (PROTOCOL.TXT), H (moused.c) or m (HT6513B)", () => {
    expect(identificationOf("five-byte")?.sequences).toEqual([[], [0x48], [0x6d]]);
  });

  test("PS/2 mice have none", () => {
    expect(identificationOf("ps2-wheel")).toBeUndefined();
  });

  test("HT6513 data sheet of 1996: a receiver with eight bits sees CD", () => {
    expect(IDENTIFICATION_WITH_BIT_7).toBe(0xcd);
  });
});

const plain = { otherId: [0x4d], revision: 100, maker: "EDW", product: "0001", optional: undefined };
const fields = { serialNumber: "", className: "MOUSE", compatibleIds: "", userName: "" };

describe("Plug and Play id: External COM Device Specification, Table 2", () => {
  test("the shortest mouse string has twelve characters, M included (Table 3)", () => {
    expect(encodePlugAndPlayId(plain, "7-bit")).toHaveLength(12);
  });

  test("7-bit: ( = 28, revision 1.00 = 01 24 unshifted, maker, product, ) = 29, no checksum", () => {
    expect(encodePlugAndPlayId(plain, "7-bit")).toEqual([
      0x4d, 0x28, 0x01, 0x24, 0x45, 0x44, 0x57, 0x30, 0x30, 0x30, 0x31, 0x29,
    ]);
  });

  test("6-bit: marks 08 and 09, characters less 20, revision as it is", () => {
    expect(encodePlugAndPlayId(plain, "6-bit")).toEqual([
      0x4d, 0x08, 0x01, 0x24, 0x25, 0x24, 0x37, 0x10, 0x10, 0x10, 0x11, 0x09,
    ]);
  });

  test("an empty field before one that is there is shown by its extend mark; 6-bit strings keep bit 6 clear", () => {
    const codes = encodePlugAndPlayId({ ...plain, optional: fields }, "6-bit");
    expect(codes.slice(12 - 1, -3)).toEqual([0x3c, 0x3c, 0x2d, 0x2f, 0x35, 0x33, 0x25]);
    expect(codes.slice(1).every((code) => code < 0x40)).toBe(true);
  });

  test("checksum of the 6-bit string, added by hand", () => {
    /* 08+01+24 = 2D, 25+24+37 = 80, 10+10+10+11 = 41, 3C+3C = 78, 2D+2F+35+33+25 = E9, 09: 258 in all, 58 mod 256. */
    const codes = encodePlugAndPlayId({ ...plain, optional: fields }, "6-bit");
    expect(plugAndPlayChecksum(codes)).toBe(0x58);
    expect(codes.slice(-3)).toEqual([0x15, 0x18, 0x09]);
  });

  test("checksum of the 7-bit string, added by hand", () => {
    /* 28+01+24 = 4D, 45+44+57 = E0, 30+30+30+31 = C1, 5C+5C = B8, 4D+4F+55+53+45 = 189, 29: 458, 58 mod 256. */
    const codes = encodePlugAndPlayId({ ...plain, optional: fields }, "7-bit");
    expect(plugAndPlayChecksum(codes)).toBe(0x58);
    expect(codes.slice(-3)).toEqual([0x35, 0x38, 0x29]);
  });

  /**
   * HT6513B data sheet p. 7: a string of 30 characters with M3 before it, whose checksum is printed as 19 12. Maker and
   * product are put together from memory; length and checksum were read.
   */
  test("HT6513B: 30 characters, checksum 92 as the 6-bit codes 19 12", () => {
    const codes = encodePlugAndPlayId(
      {
        otherId: [0x4d, 0x33],
        revision: 100,
        maker: "HTK",
        product: "0001",
        optional: { ...fields, compatibleIds: "PNP0F0C" },
      },
      "6-bit",
    );
    expect(codes).toHaveLength(30);
    expect(plugAndPlayChecksum(codes)).toBe(0x92);
    expect(codes.slice(-3)).toEqual([0x19, 0x12, 0x09]);
  });

  test("digits are upper case and two", () => {
    expect([0xc4, 0x92, 0xa5, 0x05].map(checksumDigits)).toEqual(["C4", "92", "A5", "05"]);
  });

  test("without marks there is no checksum", () => {
    expect(plugAndPlayChecksum([0x4d])).toBeUndefined();
    expect(plugAndPlayChecksum([0x28, 0x01, 0x24])).toBeUndefined();
    expect(plugAndPlayChecksum([0x28, 0x29])).toBeUndefined();
  });

  test("lengths of the fields, Table 2", () => {
    const lengths = Object.fromEntries(idFields.map(({ name, min, max }) => [name, [min, max]]));
    expect(lengths).toMatchObject({
      "other id": [0, 16],
      revision: [2, 2],
      maker: [3, 3],
      product: [4, 4],
      checksum: [0, 2],
    });
  });
});
