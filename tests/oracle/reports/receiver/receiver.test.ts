import { afterEach, describe, expect, test } from "vitest";
import type { ButtonName } from "../../../../src-core/model/layouts/layout.ts";
import { rightEncoders } from "../../../src-core/reports/corpus.ts";
import { interpretedEncoder } from "./interpreted-encoder.ts";
import { mice } from "./mice.ts";
import { Receiver } from "./receiver.ts";
import { Pointer, pressed, Trial } from "./trial.ts";
import { wholeStrokes } from "./whole-strokes.ts";

/*
 * A receiver that is in use decodes what the interpreter makes of encoders: gpm, which reads the bytes from a
 * pseudo-terminal as it would from a mouse, sees the movement and the buttons that went in.
 */

/**
 * Movements in the layout's sense. Those of y alone are even, as gpm, whose rows are twice as high as its columns
 * are wide, tells one step of y for two counts and keeps the odd one.
 */
const movements: readonly (readonly [number, number])[] = [
  ...[2, 4, 30, 62, 64, 126].flatMap((y) => [[0, y] as const, [0, -y] as const]),
  ...[1, 2, 31, 32, 63, 64, 100, 127].flatMap((x) => [[x, 0] as const, [-x, 0] as const]),
  ...[
    [1, 1],
    [-1, -1],
    [1, -1],
    [-1, 1],
    [5, 3],
    [-64, 63],
    [64, -65],
    [127, 127],
    [-127, -127],
    [127, -127],
    [-127, 127],
  ].map(([x = 0, y = 0]) => [x, y] as const),
];

/** What nine bits carry besides. */
const longMovements = [
  [200, 0],
  [-200, 0],
  [0, 254],
  [0, -254],
  [255, 255],
  [-255, -255],
  [255, -129],
] as const;

const buttonNames: readonly ButtonName[] = ["left", "right", "middle", "button4", "button5"];

/** All sets of these buttons but the empty one. Those with the middle one come last: gpm, having seen one
 * report of four bytes, waits for fourth bytes until one says that the button is up, which not every encoder sends. */
function setsOf(buttons: readonly ButtonName[]): readonly (readonly ButtonName[])[] {
  const sets = Array.from({ length: 2 ** buttons.length - 1 }, (_, index) =>
    buttons.filter((_, bit) => ((index + 1) >> bit) % 2 === 1),
  );
  return [...sets.filter((set) => !set.includes("middle")), ...sets.filter((set) => set.includes("middle"))];
}

let receiver: Receiver | undefined;

afterEach(async () => {
  await receiver?.end();
  receiver = undefined;
});

describe.each(mice)("gpm reads $layout", ({ layout, type, yGrows, answer, wheel: wheelIs }) => {
  test.each(Object.entries(rightEncoders[layout]))("%s", async (_, example) => {
    const encoder = interpretedEncoder(example);
    receiver = await Receiver.start(type, answer);
    const trial = new Trial(encoder, receiver);
    const pointer = new Pointer(yGrows);
    const bits = Math.min(encoder.fields.get("x") ?? 0, encoder.fields.get("y") ?? 0);
    const isLong = layout.startsWith("ps2-") && bits > 8;
    for (const movement of isLong ? [...movements, ...longMovements] : movements) {
      await trial.move(pointer.moved(movement, []));
    }
    for (const turn of encoder.fields.has("wheel") ? [1, -1] : []) {
      if (wheelIs === "as buttons") await trial.turnAsButton(turn);
      else await trial.turnAsMovement(turn);
    }
    for (const set of setsOf(buttonNames.filter((button) => encoder.fields.has(button)))) {
      await trial.change(pressed(set));
      await trial.move(pointer.moved([5, -6], set));
      await trial.move(pointer.moved([-7, 4], set));
    }
  });
});

wholeStrokes((started) => {
  receiver = started;
});

test("where gpm says nothing the test ends, and says so", async () => {
  receiver = await Receiver.start("bare", undefined);
  await expect(receiver.next(1000)).rejects.toThrow("gpm tells nothing");
});
