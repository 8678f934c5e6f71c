import { describe, expect, test } from "vitest";
import { mice, mouseNamed } from "../../../../src-core/bench/mice/profiles.ts";
import { step } from "../../../../src-core/bench/strokes/stroke.ts";
import { ms, us } from "../../../../src-core/bench/time/time.ts";
import { quantity } from "../../../../src-core/model/quantities.ts";
import { desk, edgesOf, hex, readyDesk } from "./desk.ts";

const steady = { name: "", title: "", steps: [step({ over: 3000 * ms, right: 3000 })] };

function streaming(mouse: string) {
  const ready = readyDesk(mouse);
  while (hex(ready.ask(0xf4)) !== "FA") ready.pass(1);
  ready.host.forget();
  ready.mouse.perform(steady);
  return ready;
}

describe("the table of mice", () => {
  test("names are of a kind and each but once; titles are sentences; figures are of the model", () => {
    const names = mice.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    for (const { name, title, stresses } of mice) {
      expect(name).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
      expect(title).toMatch(/^[A-Z].*[^.]\.$/);
      for (const id of stresses) expect(quantity(id), id).toBeDefined();
    }
    expect(mouseNamed("plain")).toBe(mice[0]);
    expect(mouseNamed("mole")).toBeUndefined();
  });
});

describe("asks-for-resend", () => {
  test("refuses every third byte with FE, and takes it when it comes again", () => {
    const { askAll } = readyDesk("asks-for-resend");
    expect(hex(askAll([0xe6, 0xf3, 0x0a, 0x0a, 0xf2]))).toBe("FA FA FE FA FA 00");
    expect(hex(askAll([0xe9, 0xe9]))).toBe("FE FA 00 02 0A");
  });
});

describe("ignores-unknown-commands", () => {
  test("says nothing to a byte that is no command, nor to an argument that is none", () => {
    const { ask, askAll } = readyDesk("ignores-unknown-commands");
    expect(askAll([0x00, 0xe0])).toEqual([]);
    expect(hex(ask(0xf3))).toBe("FA");
    expect(ask(0x55)).toEqual([]);
    expect(hex(askAll([0x0a, 0xe9]))).toBe("FA FA 00 02 0A");
  });
});

describe("glitch-on-clock", () => {
  test("pulses the clock for 2 us with data high, 4 ms before every third report", () => {
    const { mouse, wires, pass } = streaming("glitch-on-clock");
    pass(300);
    const glitches = mouse.record.happenings.filter(({ kind }) => kind === "glitch");
    expect(glitches.length).toBeGreaterThan(3);
    for (const [index, { time }] of glitches.entries()) {
      const [fall, rise, next] = edgesOf(wires, "clock", time, time + 10 * ms);
      expect([fall?.level, rise?.level]).toEqual([0, 1]);
      // The pulse, and the microsecond in which the line rises.
      expect((rise?.time ?? 0) - (fall?.time ?? 0)).toBe(3 * us);
      // Longer than the 2 ms after which a host gives a byte up (5170 reference, p. 1-32).
      expect((next?.time ?? 0) - (rise?.time ?? 0)).toBeGreaterThan(2 * ms);
      expect(mouse.record.sent.some(({ report, start }) => report === 3 * index + 2 && start > time)).toBe(
        true,
      );
    }
  });
});

describe("disturbed-data", () => {
  test("every seventh byte of reports has wrong parity, and no other", () => {
    const { host, pass } = streaming("disturbed-data");
    pass(400);
    const wrong = host.heard.flatMap(({ sound }, index) => (sound ? [] : [index + 1]));
    // 40 reports of three bytes.
    expect(wrong).toEqual(Array.from({ length: 17 }, (_, index) => 7 * (index + 1)));
  });
});

describe("disturbed-data, sent again", () => {
  test("arrives as it is", () => {
    const { host, pass } = streaming("disturbed-data");
    while (host.heard.length < 5) pass(0.1);
    host.cutAtClock = 4;
    pass(10);
    // The sixth byte was cut off, so the whole report came again; after its three bytes comes the seventh that was begun.
    const wrong = host.heard.flatMap(({ sound }, index) => (sound ? [] : [index + 1]));
    expect([host.cuts, wrong]).toEqual([1, [9]]);
  });
});

describe("restarts-itself", () => {
  test("in the middle of the fourth report; AA 00 after the self-test, then silence until F4", () => {
    const { host, mouse, ask, pass } = streaming("restarts-itself");
    pass(1000);
    const bytes = host.bytes();
    expect(bytes).toHaveLength(3 * 3 + 1 + 2);
    expect(hex(bytes.slice(-3))).toBe("08 AA 00");
    const silent = ((host.heard.at(-2)?.start ?? 0) - (host.heard.at(-3)?.end ?? 0)) / ms;
    expect(Math.abs(silent - 300)).toBeLessThan(1);
    const tests = mouse.record.happenings.filter(({ kind }) => kind === "self-test");
    expect(tests).toMatchObject([{ because: "power-on" }, { because: "own-restart" }]);
    expect(mouse.record.reports.at(-1)?.sentAt).toBeUndefined();
    expect(hex(ask(0xf4).slice(0, 1))).toBe("FA");
    pass(300);
    // Once is enough.
    expect(mouse.record.reports.length).toBeGreaterThan(20);
  });
});

describe("unplugged-and-plugged-again", () => {
  test("lets the lines go in mid-report, is away for 200 ms, and comes up as after power-on", () => {
    const { host, mouse, pass, wires } = streaming("unplugged-and-plugged-again");
    pass(1000);
    expect(hex(host.bytes().slice(-3))).toBe("08 AA 00");
    const unplugged = mouse.record.happenings.find(({ kind }) => kind === "unplugged");
    const powered = mouse.record.happenings.findLast(({ kind }) => kind === "powered");
    expect((powered?.time ?? 0) - (unplugged?.time ?? 0)).toBe(200 * ms);
    // Away for 200 ms, reset for 150 ms, self-test for 300 ms.
    const back = (host.heard.at(-2)?.start ?? 0) - (unplugged?.time ?? 0);
    expect(Math.abs(back / ms - 650)).toBeLessThan(1);
    expect(edgesOf(wires, "clock", (unplugged?.time ?? 0) + 1, powered?.time ?? 0)).toEqual([]);
  });

  test("takes its pull-ups along", () => {
    const { mouse, wires, pass } = streaming("unplugged-and-plugged-again");
    expect(wires.data.isPulledUpBut("firmware")).toBe(true);
    while (!mouse.record.happenings.some(({ kind }) => kind === "unplugged")) pass(1);
    expect(wires.data.isPulledUpBut("firmware")).toBe(false);
    pass(300);
    expect(wires.data.isPulledUpBut("firmware")).toBe(true);
  });
});

describe("usb-or-ps2", () => {
  test("is a PS/2 mouse where both lines are pulled up when it gets power", () => {
    const { host, mouse, pass, ask } = desk("usb-or-ps2");
    pass(600);
    expect(hex(host.bytes())).toBe("AA 00");
    expect(mouse.record.happenings.map(({ kind }) => kind)).toContain("chose-ps2");
    expect(hex(ask(0xf2))).toBe("FA 00");
  });

  test.each([
    ["the host holds the clock low", "clock"],
    ["the host holds data low", "data"],
    ["there are no pull-ups", "pull-ups"],
  ])("is a USB mouse for good where %s", (_, what) => {
    const { host, mouse, wires, pass, ask } = desk("usb-or-ps2");
    const cause = { party: "firmware", at: undefined } as const;
    if (what === "clock") host.hold("low");
    else if (what === "data") host.hold("released", "low");
    else for (const wire of [wires.clock, wires.data]) wire.pullUp("firmware", false, cause);
    pass(600);
    host.hold("released");
    for (const wire of [wires.clock, wires.data]) wire.pullUp("firmware", true, cause);
    pass(3000);
    expect(host.bytes()).toEqual([]);
    expect(mouse.record.happenings.map(({ kind }) => kind)).toContain("chose-usb");
    expect(ask(0xff)).toEqual([]);
  });

  test("other mice do not mind a host that holds the clock at power-on: they announce themselves later", () => {
    const { host, pass } = desk("plain");
    host.hold("low");
    pass(2000);
    expect(host.bytes()).toEqual([]);
    host.hold("released");
    pass(5);
    expect(hex(host.bytes())).toBe("AA 00");
  });
});
