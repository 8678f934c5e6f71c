import type { Example } from "../../../../src-core/checks/rule.ts";
import { rightFirmware } from "../../../../src-core/checks/runs/right-firmware.ts";
import type { Style } from "../../../firmwares/planted/planted-fault.ts";
import { filesOf } from "../../../firmwares/wrong-version.ts";

/** A text that stands once in the firmware, and what stands there instead. */
export type Change = readonly [find: string, put: string];

/** What the hand does, and at which mouse: one run is made, at a PC that toggles RTS. */
export interface Cell {
  readonly stroke: string;
  readonly mouse?: string;
}

/** The right firmware of the rules' examples with these changes. Throws where a text does not stand there just once. */
export function versionOf(cell: Cell, ...changes: readonly Change[]): Example {
  return {
    ...changed(rightFirmware, changes),
    "edgewise.json": JSON.stringify({ simulate: simulated(cell) }),
  };
}

/** The same of a right firmware of tests/firmwares. */
export function versionIn(style: Style, cell: Cell, ...changes: readonly Change[]): Example {
  const { "edgewise.json": settings = "{}", ...sources } = filesOf(style);
  const files = Object.fromEntries(Object.entries(sources).map(([name, text]) => [`${style}/${name}`, text]));
  return {
    ...changed(files, changes),
    [`${style}/edgewise.json`]: JSON.stringify({ ...JSON.parse(settings), simulate: simulated(cell) }),
  };
}

function simulated({ stroke, mouse = "plain" }: Cell) {
  return { mice: [mouse], pcs: ["rts-toggle"], strokes: [stroke] };
}

function changed(files: Example, changes: readonly Change[]): Example {
  const texts = new Map(Object.entries(files));
  for (const [find, put] of changes) {
    const holding = [...texts].filter(([, text]) => text.includes(find));
    const [[name, text] = ["", ""], ...more] = holding;
    const parts = text.split(find);
    if (more.length > 0 || parts.length !== 2)
      throw new Error(`it stands ${holding.length === 0 ? "nowhere" : "more than once"}: ${find}`);
    texts.set(name, parts.join(put));
  }
  return Object.fromEntries(texts);
}

/** The line, with carets under `place` in it for a finding of the rule. */
export function expected(line: string, place: string, rule: string, part = ""): string {
  const from = line.indexOf(place);
  if (from < 0) throw new Error(`no ${place} in ${line}`);
  const carets = "//".padEnd(from) + "^".repeat(place.length);
  return `${line}\n${carets} ${rule}${part === "" ? "" : `: ${part}`}`;
}
