import type { Span } from "../../finding.ts";
import { visibleRange } from "../../reader/tokens.ts";
import type { EntryWalk } from "../walk/events.ts";
import type { SendSequence, SentByte } from "./ps2-facts.ts";
import type { PathItem, SendItem } from "./sending-paths.ts";

/** The bytes of the paths of one entry, in order. */
export function sequencesOf(walk: EntryWalk, paths: readonly (readonly PathItem[])[]): SendSequence[] {
  const from = walk.entry.kind;
  return paths.map((items) => {
    const sends = items.filter((item) => item.kind === "send");
    return { from, bytes: sends.map((item, index) => sentByte(item, from !== "program" && index === 0)) };
  });
}

export function sentByte(item: SendItem, begins: boolean): SentByte {
  const expression = item.value?.from;
  const at = expression?.at ?? item.event.at;
  return {
    byte: item.byte,
    span: visibleRange(at.first, at.last),
    expression,
    call: callSpan(item),
    sender: item.sender,
    afterUnknown: item.afterUnknown || begins,
  };
}

/**
 * The call that the author would look at: the one in which the byte is named, not the one inside a wrapper that
 * hands it on.
 */
function callSpan({ event, calls, value }: SendItem): Span {
  let { at } = event;
  for (const call of [...calls].reverse()) {
    const handsOn = call.arguments.some((given) => given.from !== undefined && given.from === value?.from);
    if (!handsOn) break;
    at = call.at;
  }
  return visibleRange(at.first, at.last);
}
