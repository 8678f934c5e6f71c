import { describe, expect, test } from "vitest";
import { step } from "../../../../src-core/bench/strokes/stroke.ts";
import { ms } from "../../../../src-core/bench/time/time.ts";
import { hex, readyDesk } from "./desk.ts";

const bytes = (text: string): readonly number[] => text.split(" ").map((each) => Number.parseInt(each, 16));

/**
 * Replies of the command table in the EM84502 data sheet, section E, and of the ADNK-5023 design manual, App. F. The status
 * bytes are those of the HT82M35X data sheet, p. 3; the defaults (100 reports per second, 64 hex; resolution code 02; 1:1;
 * stream; reporting off) those of EM84502, section E a, and of the interrupt list, INT 15h AX=C201h.
 */
const exchanges: readonly (readonly [what: string, sent: string, answered: string])[] = [
  ["get device id", "F2", "FA 00"],
  ["status after power-on", "E9", "FA 00 02 64"],
  ["enable", "F4", "FA"],
  ["enable shows in the status", "F4 E9", "FA FA 20 02 64"],
  ["disable", "F4 F5 E9", "FA FA FA 00 02 64"],
  ["remote mode", "F0 E9", "FA FA 40 02 64"],
  ["stream mode", "F0 EA E9", "FA FA FA 00 02 64"],
  ["scaling 2:1", "E7 E9", "FA FA 10 02 64"],
  ["scaling 1:1", "E7 E6 E9", "FA FA FA 00 02 64"],
  ["resolution code 3", "E8 03 E9", "FA FA FA 00 03 64"],
  ["resolution code 0", "E8 00 E9", "FA FA FA 00 00 64"],
  ["10 reports per second", "F3 0A E9", "FA FA FA 00 02 0A"],
  ["200 reports per second", "F3 C8 E9", "FA FA FA 00 02 C8"],
  ["set defaults", "F3 C8 E8 00 E7 F0 F4 F6 E9", "FA FA FA FA FA FA FA FA FA 00 02 64"],
  ["read data: a report with bit 3 alone", "EB", "FA 08 00 00"],
  ["read data in remote mode", "F0 EB", "FA FA 08 00 00"],
  ["wrap mode echoes", "EE F4 00 55 FE F2", "FA F4 00 55 FE F2"],
  ["reset wrap mode", "EE 12 EC F2", "FA 12 FA FA 00"],
  ["reset wrap mode goes back to remote mode", "F0 EE EC E9", "FA FA FA FA 40 02 64"],
  ["a reset in wrap mode", "EE 12 FF", "FA 12 FA"],
  // No document says what these are in the place of an argument; see the interpreter of commands.
  ["resend in the place of an argument", "F3 FE 0A E9", "FA FA FA FA 00 02 0A"],
  ["reset in the place of an argument", "F3 FF", "FA FA"],
  ["resend of an acknowledge", "F4 FE", "FA FA"],
  ["resend of an id", "F2 FE", "FA 00 00"],
  ["resend of a status", "E9 FE", "FA 00 02 64 00 02 64"],
  ["a byte that is no command", "00", "FE"],
  ["two bytes that are none: FE, then FC (EM84502, section D i and ii)", "00 E0", "FE FC"],
  ["a good byte between", "00 F5 00", "FE FA FE"],
  ["a rate that there is not", "F3 55", "FA FE"],
  ["a rate that there is not, then one that there is", "F3 55 50 E9", "FA FE FA FA 00 02 50"],
  ["two rates that there are not", "F3 55 56 F4", "FA FE FC FA"],
  ["a resolution code that there is not", "E8 04", "FA FE"],
];

describe("a plain mouse answers", () => {
  test.each(exchanges)("%s: %s", (_, sent, answered) => {
    expect(hex(readyDesk("plain").askAll(bytes(sent)))).toBe(answered);
  });

  test("FF with FA, and after its self-test of 300 ms with AA 00", () => {
    const { host, ask, pass } = readyDesk("plain");
    expect(hex(ask(0xff))).toBe("FA");
    pass(200);
    expect(hex(host.bytes())).toBe("FA");
    pass(100);
    expect(hex(host.bytes())).toBe("FA AA 00");
  });

  test("the host with an acknowledge bit for each byte", () => {
    const { host, askAll } = readyDesk("plain");
    askAll([0xf3, 0xc8, 0x00]);
    expect(host.acknowledged).toEqual([true, true, true]);
  });

  test("commands that came in the self-test not at all", () => {
    const { host, pass } = readyDesk("plain");
    host.send(0xff);
    pass(60);
    host.send(0xf2);
    pass(100);
    expect(hex(host.bytes())).toBe("FA");
    // The request stands until the self-test is over; then it is clocked in, and AA 00 gives way to it.
    pass(300);
    expect(hex(host.bytes())).toBe("FA FA 00");
  });
});

/** Which knock leads to which id: HT82M35X, p. 3 (03); sentelic notes, section A (04). Rates C8 64 50 are 200 100 80. */
const knocks: readonly (readonly [mouse: string, sent: string, id: string])[] = [
  ["plain", "F3 C8 F3 64 F3 50", "00"],
  ["plain", "F3 C8 F3 C8 F3 50", "00"],
  ["wheel", "F3 C8 F3 64 F3 50", "03"],
  ["wheel", "F3 C8 F3 C8 F3 50", "00"],
  ["wheel", "F3 C8 F3 64", "00"],
  ["wheel", "F3 C8 F3 64 E6 F3 50", "00"],
  ["wheel", "F3 64 F3 C8 F3 64 F3 50", "03"],
  ["wheel", "F3 C8 F3 64 F3 50 F6", "00"],
  ["five-button", "F3 C8 F3 64 F3 50", "03"],
  ["five-button", "F3 C8 F3 C8 F3 50", "04"],
  ["five-button", "F3 C8 F3 64 F3 50 F3 C8 F3 C8 F3 50", "04"],
  ["five-button-after-wheel", "F3 C8 F3 C8 F3 50", "00"],
  ["five-button-after-wheel", "F3 C8 F3 64 F3 50 F3 C8 F3 C8 F3 50", "04"],
];

describe("knocks", () => {
  test.each(knocks)("%s mouse, %s: id %s", (mouse, sent, id) => {
    const { ask, askAll } = readyDesk(mouse);
    askAll(bytes(sent));
    expect(hex(ask(0xf2))).toBe(`FA ${id}`);
  });

  test("leave the last rate behind (SC84512: the rates are real settings)", () => {
    const { ask, askAll } = readyDesk("wheel");
    askAll(bytes("F3 C8 F3 64 F3 50"));
    expect(hex(ask(0xe9))).toBe("FA 00 02 50");
  });

  test("are not taken in wrap mode (SC84512, p. 7), and a reset takes their effect back", () => {
    const { ask, askAll, pass, host } = readyDesk("wheel");
    askAll(bytes("EE F3 C8 F3 64 F3 50 EC"));
    expect(hex(ask(0xf2))).toBe("FA 00");
    askAll(bytes("F3 C8 F3 64 F3 50"));
    expect(hex(ask(0xf2))).toBe("FA 03");
    ask(0xff);
    pass(400);
    host.forget();
    expect(hex(ask(0xf2))).toBe("FA 00");
  });
});

describe("the status request", () => {
  test("tells buttons in the order left, middle, right (HT82M35X, p. 3)", () => {
    const { mouse, ask } = readyDesk("plain");
    mouse.perform({ name: "", title: "", steps: [step({ press: ["left"], over: ms })] });
    expect(hex(ask(0xe9))).toBe("FA 04 02 64");
    mouse.perform({ name: "", title: "", steps: [step({ press: ["right"], release: ["left"], over: ms })] });
    expect(hex(ask(0xe9))).toBe("FA 01 02 64");
    mouse.perform({ name: "", title: "", steps: [step({ press: ["middle"], over: ms })] });
    expect(hex(ask(0xe9))).toBe("FA 03 02 64");
  });
});
