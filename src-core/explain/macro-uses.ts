import type { Span } from "../finding.ts";
import type { ProgramUnit } from "../reader/program/program.ts";
import { type MacroDefinition, type MacroUse, outermostUse } from "../reader/tokens.ts";
import type { TypedExpression } from "../reader/typed/nodes.ts";
import { walkUnit } from "../reader/typed/walk.ts";
import { written } from "./around.ts";
import { holds } from "./explanation.ts";
import type { Place } from "./place.ts";

/** A macro call in a file and what it stands for there. */
export interface MacroUseAt {
  /** Undefined for a call with arguments, which is more than a name. */
  readonly name: string | undefined;
  readonly call: Span;
  /** Undefined where it stands for no whole expression. */
  readonly expression: TypedExpression | undefined;
}

/** The smallest macro call under a place: that of `CLOCK` in `_BV(CLOCK)`. */
export function macroCallAt({ unit, file, offset }: Place): MacroUse | undefined {
  let best: MacroUse | undefined;
  for (const use of unit.preprocessed.uses) {
    if (holds(use.call, file, offset) && (best === undefined || lengthOf(use) < lengthOf(best))) best = use;
  }
  return best;
}

/** That call and what it stands for there. */
export function macroUseAt(place: Place): MacroUseAt | undefined {
  const use = macroCallAt(place);
  if (use === undefined) return undefined;
  const { name, call } = use;
  const found = indexOf(place.unit).byCall.get(callKey(use))?.[0];
  const isName = call.end - call.start === name.length;
  return { name: isName ? name : undefined, call, expression: found?.expression };
}

/** One expansion of a macro as an expression, and where a reader sees it: the outermost call around it. */
export interface Expansion {
  readonly expression: TypedExpression;
  readonly call: Span;
}

/** What a macro stands for wherever it is used, through other macros too. */
export function expansionsOf(unit: ProgramUnit, { definition }: MacroDefinition): readonly Expansion[] {
  return definition === undefined ? [] : (indexOf(unit).byDefinition.get(spanKey(definition)) ?? []);
}

interface ExpansionIndex {
  readonly byCall: ReadonlyMap<string, readonly Expansion[]>;
  readonly byDefinition: ReadonlyMap<string, readonly Expansion[]>;
}

const indexes = new WeakMap<ProgramUnit, ExpansionIndex>();

/** Made once for a unit as it was read. */
function indexOf(unit: ProgramUnit): ExpansionIndex {
  const known = indexes.get(unit);
  if (known !== undefined) return known;
  const byCall = new Map<string, Expansion[]>();
  const byDefinition = new Map<string, Expansion[]>();
  const seen = new Set<MacroUse>();
  walkUnit(unit.typed, {
    expression(expression) {
      for (const use of usesAround(expression)) {
        if (seen.has(use)) continue;
        seen.add(use);
        const expansion = { expression: written(expression), call: outermostUse(use).call };
        add(byCall, callKey(use), expansion);
        if (use.definition !== undefined) add(byDefinition, spanKey(use.definition), expansion);
      }
      return true;
    },
  });
  const made = { byCall, byDefinition };
  indexes.set(unit, made);
  return made;
}

/** The macro uses that a whole expression came out of, inner ones first. */
function usesAround({ at: { first, last } }: TypedExpression): readonly MacroUse[] {
  if (first.macro === undefined || last.macro === undefined) return [];
  const ends = new Set(chainOf(last.macro));
  return chainOf(first.macro).filter((use) => ends.has(use));
}

function chainOf(use: MacroUse): readonly MacroUse[] {
  return use.within === undefined ? [use] : [use, ...chainOf(use.within)];
}

function add(index: Map<string, Expansion[]>, key: string, expansion: Expansion): void {
  const known = index.get(key);
  if (known === undefined) index.set(key, [expansion]);
  else known.push(expansion);
}

function callKey({ name, call }: MacroUse): string {
  return `${name} ${spanKey(call)}`;
}

function spanKey({ file, start, end }: Span): string {
  return `${file}:${start}:${end}`;
}

function lengthOf({ call }: MacroUse): number {
  return call.end - call.start;
}
