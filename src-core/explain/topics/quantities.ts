import { quantities } from "../../model/quantities.ts";
import { requirement, sourceOf } from "../bounds.ts";
import { type Entry, texts } from "./topic.ts";

/** The numbers of both protocols. `known` says which rules there are. */
export function quantityEntries(): readonly Entry[] {
  return quantities.map((each) => ({
    words: [each.id, each.title],
    topic: () => ({
      name: each.id,
      kind:
        each.kind === "setting"
          ? "quantity that the firmware chooses"
          : "quantity of the mouse, the PC or the wire",
      title: each.title,
      parts: texts(each.meaning, requirement(each), ...sourceOf(each).split("\n\n")),
      related: each.rules,
    }),
  }));
}
