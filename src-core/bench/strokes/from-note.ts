import type { TryNote } from "../../notes/note.ts";
import { ms, type Time } from "../time/time.ts";
import { type Stroke, step } from "./stroke.ts";

/** Counts per millisecond at which a tried movement is made: our own choice, brisk and within one report's range. */
const speed = 2;
const shortest = 20 * ms;
const perWheelStep = 20 * ms;

/** The movement that a `@wire try` note asks for: its buttons go down, the mouse moves, the buttons are let go. */
export function strokeOfTry(note: TryNote): Stroke {
  const { right, down, wheel, press } = note;
  const over: Time = Math.max(
    shortest,
    Math.ceil(Math.max(Math.abs(right), Math.abs(down)) / speed) * ms,
    Math.abs(wheel) * perWheelStep,
  );
  return {
    name: "try",
    title: "The movement of the note.",
    steps: [step({ press, over, right, down, wheel }), step({ release: press, over: shortest })],
  };
}
