import type { TimeWindow } from "../../../server/language-server/client-messages/runs.ts";

/** What of a run of `ended` picoseconds is in sight. It lies within the run and has a length. */

/** So long that the bits of a mouse fill the view; nothing on the wires is shorter than some microseconds. */
export const shortest = 20e6;

export function whole(ended: number): TimeWindow {
  return { from: 0, to: ended };
}

/** Shows `factor` times as much, with `fixed` staying where it is. */
export function zoomed({ from, to }: TimeWindow, factor: number, fixed: number, ended: number): TimeWindow {
  const length = Math.min(ended, Math.max(Math.min(shortest, ended), (to - from) * factor));
  const share = (fixed - from) / (to - from);
  return within(fixed - share * length, length, ended);
}

/** Moves by so much of what is in sight. */
export function panned({ from, to }: TimeWindow, share: number, ended: number): TimeWindow {
  return within(from + share * (to - from), to - from, ended);
}

/** As close as before, at the begin of the run. */
export function atBegin({ from, to }: TimeWindow): TimeWindow {
  return { from: 0, to: to - from };
}

export function atEnd({ from, to }: TimeWindow, ended: number): TimeWindow {
  return { from: ended - (to - from), to: ended };
}

/** The same view where a stretch is in sight, else one of the same length with the stretch in its middle; longer where it needs to. */
export function revealing(view: TimeWindow, stretch: TimeWindow, ended: number): TimeWindow {
  if (stretch.from >= view.from && stretch.to <= view.to) return view;
  const length = Math.max(view.to - view.from, stretch.to - stretch.from);
  return within((stretch.from + stretch.to - length) / 2, length, ended);
}

/** So close that a stretch takes this share of the view, in its middle. */
export function closeUp(stretch: TimeWindow, share: number, ended: number): TimeWindow {
  const length = Math.min(ended, Math.max(shortest, (stretch.to - stretch.from) / share));
  return within((stretch.from + stretch.to - length) / 2, length, ended);
}

function within(from: number, length: number, ended: number): TimeWindow {
  const begin = Math.max(0, Math.min(from, ended - length));
  return { from: begin, to: begin + length };
}

/** A part of the run that is laid out, and for how many columns. */
export interface Tile extends TimeWindow {
  readonly columns: number;
}

/** What to have laid out for a view: as much again on both sides, so that there is something to pan to. */
export function tileFor(view: TimeWindow, width: number, ended: number): Tile {
  const length = view.to - view.from;
  const from = Math.floor(Math.max(0, view.from - length));
  const to = Math.ceil(Math.min(ended, view.to + length));
  return { from, to, columns: Math.max(1, Math.round((width * (to - from)) / length)) };
}

/** Whether a tile is as fine as the view needs, not much finer, and reaches beyond it. */
export function serves(tile: Tile | undefined, view: TimeWindow, width: number, ended: number): boolean {
  if (tile === undefined) return false;
  const margin = (view.to - view.from) / 4;
  const reaches =
    tile.from <= Math.max(0, view.from - margin) && tile.to >= Math.min(ended, view.to + margin);
  const finest = (tile.to - tile.from) / tile.columns;
  const wanted = (view.to - view.from) / width;
  return reaches && finest <= 1.1 * wanted && finest >= 0.6 * wanted;
}
