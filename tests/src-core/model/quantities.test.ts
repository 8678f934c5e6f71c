import { describe, expect, test } from "vitest";
import { allows, formatRange, quantities, quantity } from "../../../src-core/model/quantities.ts";
import { formatSource } from "../../../src-core/model/sources.ts";

/** Id, min, max, unit, and the document that prints it. */
type Row = readonly [
  id: string,
  min: number | undefined,
  max: number | undefined,
  unit: string,
  document: string,
];

/** The cited timing tables, typed from them. */
const published: readonly Row[] = [
  ["ps2.data-setup", 5, 25, "us", "LPC47M102S data sheet, Fig. 33, t1"],
  ["ps2.data-hold", 5, undefined, "us", "LPC47M102S data sheet, Fig. 33, t2"],
  ["ps2.clock-low", 30, 50, "us", "LPC47M102S data sheet, Fig. 33, t3"],
  ["ps2.clock-high", 30, 50, "us", "LPC47M102S data sheet, Fig. 33, t4"],
  ["ps2.inhibit-after-byte", undefined, 50, "us", "LPC47M102S data sheet, Fig. 33, t5"],
  ["ps2.device-sample", 5, 25, "us", "LPC47M102S data sheet, Fig. 33, t6"],
  ["ps2.acknowledge-setup", 5, undefined, "us", "NT6881 keyboard controller data sheet V2.6, p. 14, T9"],
  ["ps2.acknowledge-release", 5, 25, "us", "NT6881 keyboard controller data sheet V2.6, p. 14, T10"],
  [
    "ps2.clock-frequency",
    10,
    16.7,
    "kHz",
    "The PS/2 Mouse/Keyboard Protocol, General Description; Device-to-Host",
  ],
  ["ps2.request-hold", 100, undefined, "us", "The PS/2 Mouse/Keyboard Protocol, Host-to-Device"],
  ["ps2.request-poll", undefined, 10, "ms", "The PS/2 Mouse/Keyboard Protocol, Host-to-Device"],
  ["ps2.start-timeout", 15, undefined, "ms", "The PS/2 Mouse/Keyboard Protocol, Host-to-Device, Fig. 4 (a)"],
  ["ps2.send-timeout", 2, undefined, "ms", "The PS/2 Mouse/Keyboard Protocol, Host-to-Device, Fig. 4 (b)"],
  ["ps2.bus-high", 50, undefined, "us", "The PS/2 Mouse/Keyboard Protocol, Device-to-Host"],
  ["ps2.pull-up", 1, 10, "kohm", "The PS/2 Mouse/Keyboard Protocol, Electrical Interface"],
  ["ps2.receive-timeout", 2, undefined, "ms", "Technical Reference, 5170, p. 1-32"],
  ["ps2.data-settled", undefined, 1, "us", "HDNS-2200 optical mouse chip data sheet, p. 9, note 2"],
  ["serial.ident-delay", 0, 200, "ms", "Plug and Play External COM Device Specification v1.00, 2.1"],
  ["rs232.driver-space", 5, 15, "V", "RS-232 overview SLLA607, electrical overview"],
  ["rs232.driver-mark", -15, -5, "V", "RS-232 overview SLLA607, electrical overview"],
  ["rs232.receiver-space", 3, undefined, "V", "RS-232 overview SLLA607, electrical overview"],
  ["rs232.slew-rate", undefined, 30, "V/us", "MC1488 line driver data sheet, applications"],
];

describe("quantities as their sources print them", () => {
  test.each(published)("%s: %s to %s %s, %s", (id, min, max, unit, document) => {
    const found = quantity(id);
    expect([found?.min, found?.max, found?.unit]).toEqual([min, max, unit]);
    expect(found?.sources.map(formatSource)).toContain(document);
  });
});

/** Id, the figure that both sources bound, and the figures that have to be named: chosen and not chosen. */
const disagreements: readonly (readonly [id: string, chosen: number, other: number])[] = [
  ["ps2.request-hold", 100, 60],
  ["ps2.reply-timeout", 25, 20],
  ["ps2.reset-wait", 1000, 4000],
  ["ps2.bus-high", 50, 20],
  ["ps2.supply-current", 100, 275],
  ["ps2.override-clock", 10, 11],
  ["rs232.short-circuit-current", 100, 500],
  ["rs232.transition", 3, 4],
  ["serial.ident-delay", 200, 240],
];

describe("where sources disagree, both figures are named and the stricter is the limit", () => {
  test.each(disagreements)("%s: %s, elsewhere %s", (id, chosen, other) => {
    const found = quantity(id);
    expect([found?.min, found?.max]).toContain(chosen);
    const named = found?.disagreement?.flatMap(({ min, typical, max }) => [min, typical, max]);
    expect(named).toContain(other);
  });
});

describe("the table of quantities", () => {
  test("ids are unique and start with the wire they belong to", () => {
    const ids = quantities.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of ids) expect(id).toMatch(/^(ps2|serial|pnp|rs232)\.[a-z0-9-]+$/);
  });

  test("every figure that was read names where", () => {
    const nowhere = quantities.filter((each) => each.confidence === "read" && each.sources.length === 0);
    expect(nowhere).toEqual([]);
  });

  test("every meaning is one sentence", () => {
    for (const { meaning } of quantities) expect(meaning).toMatch(/^[A-Z].*[^.]\.$/s);
  });

  test("bounds are in order and typical values inside them", () => {
    for (const { min = -Infinity, max = Infinity, typical = Math.max(min, Math.min(max, 0)) } of quantities) {
      expect(min).toBeLessThanOrEqual(max);
      expect(typical).toBeGreaterThanOrEqual(min);
      expect(typical).toBeLessThanOrEqual(max);
    }
  });
});

describe("a limit is met when it is reached", () => {
  test.each([
    ["ps2.request-hold", 100, true],
    ["ps2.request-hold", 99.9, false],
    ["ps2.reset-wait", 1000, true],
    ["ps2.reset-wait", 500, false],
    ["ps2.sample-rate", 40, true],
    ["ps2.sample-rate", 50, false],
    ["serial.movement-limit", 127, true],
    ["serial.movement-limit", 128, false],
  ])("%s of %s: %s", (id, value, expected) => {
    const found = quantity(id);
    expect(found && allows(found, value)).toBe(expected);
  });
});

describe("ranges in words", () => {
  test.each([
    ["ps2.request-hold", "at least 100 us"],
    ["ps2.clock-low", "30 to 50 us"],
    ["ps2.response-time", "at most 20 ms"],
    ["ps2.resolution", "0, 1, 2 or 3"],
    ["serial.baud", "1200, 2400, 4800 or 9600 baud"],
    ["serial.ident-byte", "4D"],
    ["ps2.packet-gap", "about 500 ms"],
  ])("%s: %s", (id, text) => {
    const found = quantity(id);
    expect(found && formatRange(found)).toBe(text);
  });
});
