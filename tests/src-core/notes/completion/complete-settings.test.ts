import { describe, expect, it } from "vitest";
import { completeSettings, hoverSettings } from "../../../../src-core/notes/completion/complete-settings.ts";
import { SMALL_VOCABULARY } from "../small-vocabulary.ts";

/** `|` marks the cursor. */
function complete(marked: string) {
  const offset = marked.indexOf("|");
  return completeSettings("edgewise.json", marked.replace("|", ""), offset, SMALL_VOCABULARY);
}

function taken(marked: string, label: string): string {
  const text = marked.replace("|", "");
  const found = complete(marked).find((each) => each.label === label);
  if (found === undefined) throw new Error(`${label} is not proposed`);
  return text.slice(0, found.edit.span.start) + found.edit.text + text.slice(found.edit.span.end);
}

describe("what edgewise.json may say", () => {
  it.each([
    ["{|}", ["$schema", "board", "sources", "defines", "includePaths", "wires", "rules", "simulate"]],
    ['{"board": {"|"}}', ["chip", "clock"]],
    ['{"wires": {"ps2": {|}}}', ["clock", "data", "pullups"]],
    ['{"wires": {"ps2": {"pullups": |}}}', ["internal", "external"]],
    ['{"wires": {"serial": {"report": "|"}}}', ["two-button", "wheel"]],
    ['{"rules": {"|"}}', ["ps2/wait-forever", "ps2/no-pullup", "serial/baud-error", "note/unattached"]],
    ['{"rules": {"ps2/wait-forever": "|"}}', ["error", "warning", "info", "off"]],
    ['{"board": {"chip": "attiny85"}, "wires": {"ps2": {"clock": "|"}}}', ["0", "PB0"]],
    ['{"wires": {"ps2": {"clock": "|"}}}', []],
    ['{"nothing": {"|"}}', []],
    ['{"sources": "|"}', []],
    ['{"simulate": {"mice": ["|"]}}', ["plain", "wheel"]],
    ['{"simulate": {"pcs": ["plain", |]}}', ["rts-toggle", "hurried"]],
    ['{"simulate": {"strokes": ["|"]}}', ["circle", "nudge"]],
    // The file's own hides the bench's of its name.
    [
      '{"simulate": {"ownStrokes": {"quay": [], "nudge": []}, "strokes": ["|"]}}',
      ["quay", "nudge", "circle"],
    ],
  ])("%s", (marked, expected) => {
    expect(complete(marked).map((each) => each.label)).toEqual(expected);
  });

  it.each([
    ["{|}", "board", '{"board": {}}'],
    ['{"bo|"}', "board", '{"board": {}}'],
    ['{"bo|": {}}', "board", '{"board": {}}'],
    ['{"rules": {"ps2/wait-forever": "o|"}}', "off", '{"rules": {"ps2/wait-forever": "off"}}'],
    ['{"board": {"clock": |}}', "16MHz", '{"board": {"clock": "16MHz"}}'],
  ])("%s with %s", (marked, label, expected) => {
    expect(taken(marked, label)).toBe(expected);
  });

  it("explains keys and values", () => {
    const hover = (marked: string) =>
      hoverSettings("edgewise.json", marked.replace("|", ""), marked.indexOf("|"), SMALL_VOCABULARY)
        ?.markdown;
    expect(hover('{"bo|ard": {}}')).toContain("The chip that runs this firmware");
    expect(hover('{"wires": {"ps2": {"pullups": "inter|nal"}}}')).toContain("The chip's own pull-ups");
    expect(hover('{"simulate": {"mice": ["pla|in"]}}')).toContain("All about plain.");
    expect(hover('{"simulate": {"strokes": ["qu|ay"], "ownStrokes": {"quay": []}}}')).toContain(
      "a movement of this file",
    );
    expect(hover('{"nothing|": {}}')).toBeUndefined();
    expect(hover("{}|")).toBeUndefined();
  });
});
