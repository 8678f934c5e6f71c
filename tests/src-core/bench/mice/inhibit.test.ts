import { describe, expect, test } from "vitest";
import { step } from "../../../../src-core/bench/strokes/stroke.ts";
import { ms, us } from "../../../../src-core/bench/time/time.ts";
import { hex, readyDesk } from "./desk.ts";

/** The mouse reports every 10 ms while its hand moves. */
function streaming(mouse = "plain") {
  const ready = readyDesk(mouse);
  ready.ask(0xf4);
  ready.host.forget();
  return ready;
}

/** Two counts to the right, at once: one report, bytes 08 02 00. */
const twoRight = { name: "", title: "", steps: [step({ right: 2 })] };

describe("the host inhibits", () => {
  /** The host may cut in before the 10th rising edge (Auxiliary Device and System Timings, receive steps; EM84502, D). */
  test.each([1, 2, 5, 9, 10])(
    "at clock %i: the byte is cut off, and the whole report sent again",
    (clock) => {
      const { host, mouse, pass } = streaming();
      mouse.perform(twoRight);
      host.cutAtClock = clock;
      pass(40);
      expect(host.cuts).toBe(1);
      expect(hex(host.bytes())).toBe("08 02 00");
      const sent = mouse.record.sent.filter(({ report }) => report === 0);
      expect(sent.map(({ whole, resent, byte }) => [hex([byte]), whole, resent])).toEqual([
        ["08", false, false],
        ["08", true, true],
        ["02", true, false],
        ["00", true, false],
      ]);
      expect(sent[0]?.clocks).toBe(clock);
      expect(mouse.record.reports).toHaveLength(1);
    },
  );

  test("in the second byte: the first comes again as well (article, Device-to-Host: the whole packet)", () => {
    const { host, mouse, pass } = streaming();
    mouse.perform(twoRight);
    // The host reads one byte, then cuts into the next.
    while (host.heard.length < 1) pass(0.1);
    host.cutAtClock = 4;
    pass(40);
    expect(hex(host.bytes())).toBe("08 08 02 00");
    expect(mouse.record.reports[0]?.sentAt).toBeGreaterThan(0);
  });

  test("at clock 11: too late, the mouse takes the byte as sent", () => {
    const { host, mouse, pass } = streaming();
    mouse.perform(twoRight);
    host.cutAtClock = 11;
    pass(40);
    // The host dropped the byte that it cut into; the mouse sends the other two.
    expect(hex(host.bytes())).toBe("02 00");
    expect(mouse.record.sent.filter(({ report }) => report === 0).every(({ whole }) => whole)).toBe(true);
  });

  test("between bytes: the next one waits for 50 us of idle bus, and nothing comes twice", () => {
    const { host, mouse, pass, queue } = streaming();
    mouse.perform(twoRight);
    while (host.heard.length < 1) pass(0.01);
    // 50 us after the 11th clock at the latest (LPC47M102S, Fig. 33, t5).
    pass(0.02);
    host.hold("low");
    pass(20);
    expect(hex(host.bytes())).toBe("08");
    const released = queue.now;
    host.hold("released");
    pass(20);
    expect(hex(host.bytes())).toBe("08 02 00");
    const second = mouse.record.sent.find(({ report, byte }) => report === 0 && byte === 2);
    expect((second?.start ?? 0) - released).toBeGreaterThanOrEqual(50 * us);
  });

  test("for long: counts add up meanwhile, in one report", () => {
    const { host, mouse, pass } = streaming();
    host.hold("low");
    mouse.perform({ name: "", title: "", steps: [step({ over: 200 * ms, right: 100, down: 50 })] });
    pass(300);
    expect(host.bytes()).toEqual([]);
    host.hold("released");
    pass(50);
    const sum = mouse.record.reports.reduce((all, { values }) => all + (values.x ?? 0), 0);
    expect(mouse.record.reports).toHaveLength(2);
    expect(sum).toBe(100);
    expect(host.heard).toHaveLength(6);
  });

  test("while it sends itself: the byte is dropped without an answer", () => {
    const { host, ask, mouse } = readyDesk("plain");
    expect(ask(0xf4, { giveUpAtClock: 5 })).toEqual([]);
    expect(mouse.record.received.at(-1)).toMatchObject({ fault: "cut-off" });
    expect(host.acknowledged).toEqual([]);
    expect(hex(ask(0xf2))).toBe("FA 00");
  });

  test("and sends in the middle of a report: the report is dropped, the command answered", () => {
    const { host, mouse, pass } = streaming();
    mouse.perform(twoRight);
    while (host.heard.length < 1) pass(0.01);
    pass(0.5);
    host.send(0xf2);
    pass(60);
    expect(hex(host.bytes())).toBe("08 FA 00");
    expect(mouse.record.reports.map(({ sentAt }) => sentAt)).toEqual([undefined]);
  });
});

describe("a request to send", () => {
  /** At least 100 us in the article and the touchpad guide; more than 60 us in the 5170 reference, for keyboards. */
  test.each([
    ["plain", 100, "FA"],
    ["plain", 60, "FA"],
    ["plain", 59, ""],
    ["strict-about-requests", 100, "FA"],
    ["strict-about-requests", 99, ""],
  ])("%s notices a clock hold of %i us: %s", (name, hold, answer) => {
    const { ask, mouse } = readyDesk(name);
    expect(hex(ask(0xf4, { hold }))).toBe(answer);
    if (answer === "") {
      expect(mouse.record.happenings.at(-1)).toMatchObject({ kind: "request-unnoticed", hold: hold * us });
    } else {
      expect(mouse.record.received.at(-1)?.hold).toBe(hold * us);
    }
  });

  test("is measured from the host's pull, also where the mouse itself held the clock low just then", () => {
    const { host, mouse, pass, wires } = streaming();
    mouse.perform(twoRight);
    while (host.heard.length < 1 || wires.clock.level === 1) pass(0.005);
    host.send(0xf2);
    pass(60);
    expect(hex(host.bytes())).toBe("08 FA 00");
    expect(mouse.record.received.at(-1)?.hold).toBe(100 * us);
  });

  test("that was not noticed can be made again", () => {
    const { ask, host } = readyDesk("plain");
    ask(0xf4, { hold: 10 });
    host.giveUp();
    expect(hex(ask(0xf4))).toBe("FA");
  });

  test("without a clock hold is none, and the mouse keeps quiet while data is low", () => {
    const { host, mouse, pass } = streaming();
    host.hold("released", "low");
    mouse.perform(twoRight);
    pass(100);
    expect(host.bytes()).toEqual([]);
    expect(mouse.record.happenings.at(-1)).toMatchObject({ kind: "request-unnoticed", hold: 0 });
    host.hold("released");
    pass(40);
    expect(hex(host.bytes())).toBe("08 02 00");
  });
});

describe("faults on the wires", () => {
  /** FE for a parity error, FC for a second bad byte in a row: EM84502, section D i and ii. */
  test("wrong parity from the host: FE, then FC, then FA", () => {
    const { ask, mouse } = readyDesk("plain");
    expect(hex(ask(0xf4, { wrongParity: true }))).toBe("FE");
    expect(mouse.record.received.at(-1)).toMatchObject({ byte: 0xf4, fault: "parity" });
    expect(hex(ask(0xf4, { wrongParity: true }))).toBe("FC");
    expect(hex(ask(0xf4))).toBe("FA");
    expect(hex(ask(0xe9))).toBe("FA 20 02 64");
  });

  test("wrong parity in an argument: the mouse waits for it again", () => {
    const { ask } = readyDesk("plain");
    ask(0xf3);
    expect(hex(ask(0x0a, { wrongParity: true }))).toBe("FE");
    expect(hex(ask(0x0a))).toBe("FA");
    expect(hex(ask(0xe9))).toBe("FA 00 02 0A");
  });

  /** Article, Host-to-Device; HDNS-2200, note 3: it clocks on until data is high, then asks again. */
  test("no stop bit: the mouse clocks on, does not acknowledge, and asks again", () => {
    const { ask, host, mouse, wires, queue } = readyDesk("plain");
    const asked = queue.now;
    expect(hex(ask(0xf4, { stopLateBy: 3 }))).toBe("FE");
    expect(host.acknowledged).toEqual([false]);
    expect(mouse.record.received.at(-1)).toMatchObject({ fault: "stop" });
    const end = mouse.record.received.at(-1)?.end ?? 0;
    const clocks = wires.edges.filter(
      ({ wire, level, time, cause }) =>
        wire === "clock" && level === 0 && time > asked && time <= end && cause.party === "mouse",
    );
    expect(clocks).toHaveLength(14);
  });

  test("a data bit turned over on the way: parity shows it, and FE brings the report again", () => {
    const { ask, host, mouse, pass } = streaming("disturbed-data");
    mouse.perform({ name: "", title: "", steps: [step({ over: 400 * ms, right: 400 })] });
    while (host.heard.every(({ sound }) => sound)) pass(0.1);
    pass(0.05);
    expect(host.heard).toHaveLength(7);
    const bad = mouse.record.sent.find(({ disturbed }) => disturbed);
    expect(host.heard[6]?.byte).not.toBe(bad?.byte);
    const report = mouse.record.reports[bad?.report ?? -1];
    expect(report?.bytes).toHaveLength(3);
    expect(hex(ask(0xfe).slice(0, 3))).toBe(hex(report?.bytes ?? []));
    expect(host.heard.slice(7, 10).every(({ sound }) => sound)).toBe(true);
  });
});
