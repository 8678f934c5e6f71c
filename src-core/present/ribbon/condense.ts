import type { Time } from "../../bench/time/time.ts";
import type { Mark, MarkKind, TimeWindow } from "./ribbon.ts";

/** Marks within a window, in order of time; those that cannot be told apart where nothing finer than `finest` is seen are one. */
export function condensed(marks: readonly Mark[], window: TimeWindow, finest: Time): readonly Mark[] {
  const out: Mark[] = [];
  /** What the last mark consists of, where it may take in another. */
  let brief: Mark | undefined;
  const inside = marks
    .filter(({ from, to }) => to >= window.from && from <= window.to)
    .sort((a, b) => a.from - b.from);
  for (const mark of inside) {
    const isBrief = mark.to - mark.from < 2 * finest;
    if (isBrief && brief !== undefined && mark.from - brief.to < finest && mark.kind === brief.kind) {
      brief = together(brief, mark);
      out[out.length - 1] = brief;
    } else {
      out.push(mark);
      brief = isBrief ? mark : undefined;
    }
  }
  return out;
}

const nouns: Readonly<Record<MarkKind, string>> = {
  "from-host": "bytes",
  "from-mouse": "bytes",
  report: "reports",
  byte: "bytes",
  control: "times",
  function: "functions",
  interrupt: "interrupts",
};

function together(one: Mark, other: Mark): Mark {
  const count = one.count + other.count;
  const isSame = one.detail === other.detail || one.texts[0] === other.texts[0];
  return {
    ...one,
    to: Math.max(one.to, other.to),
    isFault: one.isFault || other.isFault,
    count,
    texts: isSame ? one.texts : [`${count} ${nouns[one.kind]}`, `${count}`],
    detail: nameOfMany(one, other, count),
    tone: one.tone === other.tone ? one.tone : Math.max(one.tone, other.tone),
  };
}

const longest = 60;

/** The names of all while they are short, with how many there are. */
function nameOfMany(one: Mark, other: Mark, count: number): string {
  const listed = one.count === 1 ? one.detail : one.detail.replace(/^\d+: /, "");
  if (listed.length > longest) return `${count}: ${listed.endsWith("...") ? listed : `${listed}, ...`}`;
  return `${count}: ${listed}, ${other.detail}`;
}
