import { expect, it } from "vitest";
import { known, sourcesOf } from "../../../../src-core/checks/ps2/sources.ts";

// At least 100 us: "The PS/2 Mouse/Keyboard Protocol", Host-to-Device. More than 60 us: Technical Reference, 5170,
// Keyboard Data Input. 200 us: Linux kernel, drivers/input/serio/ps2-gpio.c.
it("a source is named with the figures of those who disagree, and stays short enough to be read", () => {
  const text = sourcesOf(known("ps2.request-hold"));
  expect(text).toContain("The PS/2 Mouse/Keyboard Protocol, Host-to-Device");
  expect(text).toMatch(/ \(elsewhere: at least 60 us; about 200 us\)$/);
});

it("a quantity about which all agree has its sources alone", () => {
  expect(sourcesOf(known("ps2.sample-rate"))).not.toContain("elsewhere");
});
