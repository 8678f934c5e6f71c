import { describe, expect, test } from "vitest";
import { hostOfFiles } from "../../../src-core/reader/source-host.ts";
import { createService } from "../../../src-core/service/create-service.ts";
import { type Movement, noChoices } from "../../../src-core/trial-details.ts";
import { encoderFirmware, rightMark } from "../../server/built/encoder-firmware.ts";
import { loadGrammar } from "../reader/syntax/load-grammar.ts";

const grammar = await loadGrammar();

/** What comes of a movement in the first function with a note of `text`. */
function cameOf(text: string, said: Partial<Movement>) {
  const service = createService({ host: hostOfFiles({ "p/main.c": text }), grammar, startName: "" });
  const project = service.projectsAt("p")[0]?.id ?? "";
  const first = service.tryOut(project)?.reports[0];
  if (first === undefined) throw new Error("nothing was tried");
  const movement = { right: 0, down: 0, wheel: 0, press: [], ...said };
  service.choose(project, { ...noChoices, movements: [{ subject: first.subject, movement }] });
  const run = service.tryOut(project)?.reports[0]?.movement;
  if (run?.outcome.kind !== "ran") throw new Error(JSON.stringify(run));
  const { came, judgement, right } = run.outcome;
  return { given: run.given, came, judgement, right };
}

// mouse(4) of the Linux man-pages, table of the three-byte packet: 1 lb rb dy7 dy6 dx7 dx6, dx5 to dx0, dy5 to dy0.
describe("a movement through an encoder", () => {
  const right = encoderFirmware(rightMark);

  test("counts with a sign, in the layout's sense", () => {
    expect(cameOf(right, { right: -1, down: -64, press: ["right"] })).toEqual({
      given: "left 1 up 64, right pressed",
      came: "5F 3F 00",
      judgement: "right",
      right: "5F 3F 00",
    });
  });

  test("what its note does not name is left out", () => {
    const noButtons = right.replace(" left=left right=right", "");
    expect(cameOf(noButtons, { right: 1, wheel: 2, press: ["left", "middle"] })).toMatchObject({
      given: "right 1",
      came: "40 01 00",
      judgement: "right",
    });
  });

  test("one that cuts off earlier than it might is not called wrong", () => {
    const clipping = right.replace("out[0] =", "if (dx > 63) dx = 63;\n    out[0] =");
    expect(cameOf(clipping, { right: 100 })).toMatchObject({
      came: "40 3F 00",
      judgement: "allowed",
      right: "41 24 00",
    });
    expect(cameOf(clipping, { right: 40 })).toMatchObject({ came: "40 28 00", judgement: "right" });
  });

  test("one that loses what it should not is wrong", () => {
    const halving = right.replace("out[1] = dx & 0x3F", "out[1] = dx & 0x1F");
    expect(cameOf(halving, { right: 40 })).toMatchObject({
      came: "40 08 00",
      judgement: "wrong",
      right: "40 28 00",
    });
  });
});

// ADNK-5023 design manual, p. 8: byte 1 is y overflow, x overflow, y8, x8, 1, middle, right, left; y grows upwards.
test("a movement through a decoder: what it makes of the bytes, in words", () => {
  const decoder = (y: string) => `// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire decodes ps2-standard from b into x=dx y=dy left=l.0
void take(const uint8_t *b, int16_t *dx, int16_t *dy, uint8_t *l)
{
    *dx = (int16_t)b[1] - ((b[0] & 0x10) ? 256 : 0);
    *dy = ${y};
    *l = b[0] & 1;
}
`;
  const ofRight = decoder("(int16_t)b[2] - ((b[0] & 0x20) ? 256 : 0)");
  expect(cameOf(ofRight, { right: -3, down: 5, press: ["left"] })).toMatchObject({
    given: "left 3 down 5, left pressed",
    came: "left 3 down 5, left pressed",
    judgement: "right",
  });
  expect(cameOf(decoder("b[2]"), { down: 5 })).toMatchObject({
    given: "down 5",
    came: "up 251",
    judgement: "wrong",
    right: "down 5",
  });
});
