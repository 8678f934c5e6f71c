import { describe, expect, test } from "vitest";
import type { Part, Topic } from "../../../../src-core/explain/topics/topic.ts";
import { ruleIds } from "../../../../src-core/rule-ids.ts";
import { explainTerm, topicBook } from "../../../../src-core/service/explain-term.ts";

/**
 * What is asked, the kind and title of what it is, and what has to be told, as the document beside it has it.
 */
const asked: readonly (readonly [term: string, kind: string, title: string, ...facts: string[]])[] = [
  // EM84502 data sheet, section E, command table; ADNK-5023 design manual, App. F.
  ["0xF3", "command to the mouse", "set sample rate", "10, 20, 40, 60, 80, 100 or 200", "0xFA"],
  ["f4", "command to the mouse", "enable reporting", "acknowledge"],
  ["0xFF", "command to the mouse", "reset", "0xFA", "0xAA", "its id"],
  ["enable reporting", "command to the mouse", "enable reporting"],
  ["0xE8", "command to the mouse", "set resolution", "0, 1, 2 or 3"],
  ["0xFA", "reply of the mouse", "acknowledge"],
  ["0xAA", "reply of the mouse", "self-test passed"],
  // ADNK-5023 design manual, p. 9: 3 is 8 counts per millimetre.
  ["03", "argument of 0xE8, set resolution", "8 counts per millimetre"],
  // PAW3402 data sheet, 6.2.
  ["0x03", "id of a mouse", "wheel mouse, four-byte reports"],
  // 0xC8 is 200.
  ["C8", "argument of 0xF3, set sample rate", "200 reports per second"],
  // HT82M35X data sheet, p. 3.
  ["200 100 80", "sequence of sample rates", "unlocks the wheel", "0x03"],
  ["200, 100, 80", "sequence of sample rates", "unlocks the wheel"],
  // The PS/2 Mouse/Keyboard Protocol, Host-to-Device.
  ["ps2.request-hold", "quantity that the firmware chooses", "clock hold before sending", "at least 100 us"],
  ["request-hold", "quantity that the firmware chooses", "clock hold before sending"],
  // mouse(4), table of the three-byte packet.
  [
    "two-button",
    "report to the PC",
    "three bytes of seven bits, two buttons",
    "1 left right y7 y6 x7 x6",
    "0 x5 x4 x3 x2 x1 x0",
    "0 y5 y4 y3 y2 y1 y0",
  ],
  // PROTOCOL.TXT, identification.
  ["middle-button", "report to the PC", "three bytes of seven bits, a fourth for the middle button", "4D 33"],
  ["M", "identification of a serial mouse", "M, sent when RTS comes on", "two-button"],
  // Plug and Play External COM Device Specification, 2.2; nine bits at 1200 baud last 7.5 ms.
  ["7n1", "line format", "7 data bits, no parity bit, one stop bit", "9 bits", "7.5 ms", "two-button"],
  ["8E1", "line format", "8 data bits, even parity, one stop bit", "11 bits", "no, "],
  // ATmega328P data sheet: 32 KB of flash, 2 KB of RAM, INT0 on PD2.
  ["ATmega328P", "chip", "ATmega328P", "16 bits", "32 KiB", "2048 bytes", "PD2 D2 INT0"],
  ["RP2040", "chip", "RP2040", "32 bits"],
  ["serial/baud-error", "rule", "A line rate that the PC cannot read", "error"],
];

describe("a term is explained by any of its names", () => {
  test.each(asked)("%s", (term, kind, title, ...facts) => {
    const found = explainTerm(term);
    const topics = found.kind === "topics" ? found.topics : [];
    const topic = topics.find((each) => each.kind === kind && each.title === title);
    expect(topics.map((each) => [each.kind, each.title])).toContainEqual([kind, title]);
    const told = topic === undefined ? "" : wordsOf(topic);
    for (const fact of facts) expect(told).toContain(fact);
  });
});

test("a byte that means two things has a topic for each", () => {
  const found = explainTerm("0xFE");
  expect(found.kind === "topics" && found.topics.map(({ title }) => title)).toEqual([
    "resend",
    "resend request",
  ]);
});

test("what is misspelt is answered with what may have been meant", () => {
  expect(explainTerm("two-buton")).toEqual({ kind: "unknown", near: ["two-button"] });
  expect(explainTerm("ps2.request-hld")).toMatchObject({ kind: "unknown", near: ["ps2.request-hold"] });
  expect(explainTerm("0xF1")).toEqual({ kind: "unknown", near: [] });
  expect(explainTerm("")).toEqual({ kind: "unknown", near: [] });
});

test("every topic is found by its own name, says something, and names only topics that there are", () => {
  const topics = topicBook().all();
  expect(topics.length).toBeGreaterThan(200);
  for (const { name, title, parts, related } of topics) {
    const found = explainTerm(name);
    expect(found.kind === "topics" && found.topics.map((each) => each.title), name).toContain(title);
    expect(parts.length, name).toBeGreaterThan(0);
    for (const each of related) {
      if (ruleIds.includes(each)) continue;
      expect(explainTerm(each).kind, `${name} names ${each}`).toBe("topics");
    }
  }
});

/** All that is told, cells of tables with one blank in between. */
function wordsOf({ parts }: Topic): string {
  return parts.map(wordsOfPart).join("\n").replaceAll("`", "");
}

function wordsOfPart(part: Part): string {
  switch (part.kind) {
    case "text":
      return part.text;
    case "list":
      return part.items.join("\n");
    case "table":
      return part.rows.map((row) => row.join(" ")).join("\n");
  }
}
