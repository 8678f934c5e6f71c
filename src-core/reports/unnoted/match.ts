import type { FieldName, MovementField, ReportLayout, Slot } from "../../model/layouts/layout.ts";
import { isMovement } from "../subject/operands.ts";
import { highestBit, type Tie, type Wiring } from "./wiring.ts";

/** How well a function's wiring fits a layout, and what its note would say of the fields. */
export interface Match {
  readonly layout: ReportLayout;
  /** `x=dx`, in the layout's order. */
  readonly fields: readonly string[];
  /** Bits that are as the layout wants them, of `bits`. */
  readonly hits: number;
  readonly bits: number;
}

/** Bits of a movement that have to be in their places before one can speak of that movement. */
const fewestBits = 4;

export function matchOf(layout: ReportLayout, wiring: Wiring): Match | undefined {
  const { rest, lengths, ties } = wiring;
  const whole = layout.bytes.length;
  if (lengths.most !== whole || lengths.least < (layout.optionalByte ?? whole)) return undefined;
  const slots = layout.bytes
    .flatMap((row, byte) =>
      row.map((slot, bit) => ({ slot, tied: ties[byte]?.[bit] ?? [], rest: level(rest, byte, bit) })),
    )
    .filter(({ slot }) => counts(slot));
  // Without the bit that marks the first byte, any three numbers would look like a report.
  if (slots.some(({ slot, rest: at }) => slot.kind === "constant" && slot.level === 1 && at === 0))
    return undefined;
  const said = new Map<FieldName, string>();
  const taken = new Set<string>();
  let hits = 0;
  for (const field of layout.movements) {
    const best = bestInput(field, slots, taken);
    if (best === undefined) {
      if (field.name !== "wheel") return undefined;
      continue;
    }
    taken.add(best.input);
    hits += best.hits;
    said.set(field.name, `${best.opposite ? "-" : ""}${best.input}`);
  }
  hits += slots.filter(
    ({ slot, tied, rest: at }) =>
      slot.kind === "constant" && at === slot.level && !tied.some(({ input }) => taken.has(input)),
  ).length;
  const buttons = slots.flatMap(({ slot, tied }) => {
    if (slot.kind !== "button") return [];
    const tie = buttonTie(slot.activeLow, tied, taken);
    return tie === undefined ? [] : [{ field: slot.field, tie }];
  });
  for (const { field, tie } of buttons) {
    hits += 1;
    const isShared = buttons.some((other) => other.field !== field && other.tie.input === tie.input);
    const isBit = tie.bit !== undefined && !wiring.truths.has(tie.input) && (isShared || tie.bit !== 0);
    said.set(field, isBit ? `${tie.input}.${tie.bit}` : tie.input);
  }
  const fields = layout.fields.flatMap((name) => {
    const operand = said.get(name);
    return operand === undefined ? [] : [`${name}=${operand}`];
  });
  const hasButton = [...said.keys()].some((name) => !isMovement(name));
  return hasButton ? { layout, fields, hits, bits: slots.length } : undefined;
}

function level(bytes: readonly number[], byte: number, bit: number): number {
  return ((bytes[byte] ?? 0) >> bit) & 1;
}

function counts(slot: Slot): boolean {
  if (slot.kind === "ignored" || slot.kind === "overflow") return false;
  return slot.kind !== "movement" || slot.part === 1;
}

function bestInput(
  { name, bits }: MovementField,
  slots: readonly { readonly slot: Slot; readonly tied: readonly Tie[] }[],
  taken: ReadonlySet<string>,
): { readonly input: string; readonly opposite: boolean; readonly hits: number } | undefined {
  const hits = new Map<string, { readonly input: string; readonly opposite: boolean; hits: number }>();
  for (const { slot, tied } of slots) {
    if (slot.kind !== "movement" || slot.field !== name) continue;
    for (const { input, bit, opposite, inverted } of tied) {
      // Where a movement is clipped, its sign is that of the whole number.
      const isIt = bit === slot.fieldBit || (slot.fieldBit === bits - 1 && bit === highestBit);
      if (!isIt || inverted || taken.has(input)) continue;
      const key = `${opposite ? "-" : ""}${input}`;
      const known = hits.get(key);
      if (known === undefined) hits.set(key, { input, opposite, hits: 1 });
      else known.hits += 1;
    }
  }
  const [best] = [...hits.values()].sort((a, b) => b.hits - a.hits);
  return best !== undefined && best.hits >= fewestBits ? best : undefined;
}

/** The one input that is no movement and that the bit follows in the right sense. */
function buttonTie(activeLow: boolean, tied: readonly Tie[], taken: ReadonlySet<string>): Tie | undefined {
  const free = tied.filter(({ input }) => !taken.has(input));
  const isLowest = ({ bit }: Tie): boolean => bit === 0 || bit === undefined;
  // Where a button is shifted, its own higher bits would reach its neighbours' places.
  const own = new Set(free.map(({ input }) => input)).size > 1 ? free.filter(isLowest) : free;
  if (new Set(own.map(({ input }) => input)).size !== 1) return undefined;
  return own.find(({ opposite, inverted }) => !opposite && inverted === activeLow);
}
