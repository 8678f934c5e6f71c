import type { LayoutName } from "../../../../src-core/model/layouts/layout.ts";

/** What a mouse answers to a byte of its host; undefined for a mouse on a serial line, which is not asked. */
export type Answer = ((byte: number) => readonly number[]) | undefined;

/** A mouse as gpm knows it. */
export interface Mouse {
  readonly layout: LayoutName;
  /** gpm-types(7), and `gpm -m /dev/null -t help`. */
  readonly type: string;
  /** Whether y of the layout grows downwards, as gpm's does: mouse(4); for PS/2, HT82M35X data sheet, p. 3. */
  readonly yGrows: "down" | "up";
  readonly answer: Answer;
  /** How a turn of the wheel is told. */
  readonly wheel: "none" | "as buttons" | "as movement";
}

/** A PS/2 mouse acknowledges every byte of its host; after F2 it tells its id (HT82M35X data sheet, p. 3). */
function answering(id: number): Answer {
  return (byte) => (byte === 0xf2 ? [0xfa, id] : [0xfa]);
}

const serial = { answer: undefined, wheel: "none" } as const;

export const mice: readonly Mouse[] = [
  { ...serial, layout: "two-button", type: "bare", yGrows: "down" },
  { ...serial, layout: "middle-button", type: "mman", yGrows: "down" },
  { ...serial, layout: "wheel", type: "ms3", yGrows: "down", wheel: "as buttons" },
  { ...serial, layout: "five-byte", type: "msc", yGrows: "up" },
  { layout: "ps2-standard", type: "ps2", yGrows: "up", answer: answering(0), wheel: "none" },
  { layout: "ps2-wheel", type: "imps2", yGrows: "up", answer: answering(3), wheel: "as movement" },
  { layout: "ps2-five-button", type: "exps2", yGrows: "up", answer: answering(4), wheel: "as movement" },
];
