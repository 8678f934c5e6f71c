import { expect, test } from "vitest";
import { actionOf, type Key } from "../../../../client/views/ribbon/keys.ts";

const key = (name: string, held: Partial<Key> = {}): Key => ({
  key: name,
  shiftKey: false,
  ctrlKey: false,
  altKey: false,
  metaKey: false,
  ...held,
});

test.each([
  ["+", {}, { do: "zoom", factor: 0.5 }],
  ["+", { shiftKey: true }, { do: "zoom", factor: 0.5 }],
  ["-", {}, { do: "zoom", factor: 2 }],
  ["ArrowRight", {}, { do: "pan", share: 0.2 }],
  ["ArrowRight", { shiftKey: true }, { do: "step", by: 1 }],
  ["ArrowLeft", { shiftKey: true }, { do: "step", by: -1 }],
  ["ArrowUp", {}, { do: "row", by: -1 }],
  ["Home", {}, { do: "begin" }],
  ["End", {}, { do: "end" }],
  ["Enter", {}, { do: "open" }],
  ["Escape", {}, { do: "drop" }],
  ["m", {}, { do: "measure" }],
  // As with Caps Lock, and as the help has it.
  ["M", {}, { do: "measure" }],
  ["M", { shiftKey: true }, { do: "measure" }],
] as const)("%s with %j", (name, held, action) => expect(actionOf(key(name, held))).toEqual(action));

test("Tab and what is held with Ctrl, Alt or the system key are left to the editor", () => {
  expect(actionOf(key("Tab"))).toBeUndefined();
  for (const held of [{ ctrlKey: true }, { altKey: true }, { metaKey: true }])
    for (const name of ["+", "-", "0", "ArrowLeft", "m"]) expect(actionOf(key(name, held))).toBeUndefined();
});
