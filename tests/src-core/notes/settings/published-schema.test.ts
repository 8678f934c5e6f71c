import { describe, expect, it } from "vitest";
import { readSettings } from "../../../../src-core/notes/settings/read-settings.ts";
import { settingsSchema } from "../../../../src-core/notes/settings/schema.ts";
import { publishedSchema } from "../../../../src-core/service/settings-schema.ts";
import { vocabulary } from "../../../../src-core/service/vocabulary.ts";

describe("the schema that is published", () => {
  it("is the one that edgewise.json is checked by", () => {
    expect(JSON.parse(publishedSchema())).toEqual(settingsSchema(vocabulary));
  });

  it("accepts the settings that the annotation schema shows", () => {
    const text = `{ "$schema": "...", "board": { "chip": "atmega328p", "clock": "16MHz" },
      "sources": ["*.ino", "src/**/*.c"], "defines": { "BAUD": "1200" }, "includePaths": ["lib"],
      "wires": { "ps2": { "clock": "2", "data": "3", "pullups": "internal" },
                 "serial": { "uart": 0, "rts": "4", "report": "two-button", "shifter": "inverting", "baud": 1200, "line": "7N1" } },
      "rules": { "ps2/wait-forever": "warning" },
      "simulate": { "strokes": [], "mice": [], "pcs": [] } }`;
    expect(readSettings("edgewise.json", text, vocabulary).problems).toEqual([]);
  });
});
