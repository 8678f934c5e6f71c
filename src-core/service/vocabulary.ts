import { ruleOf } from "../checks/registry.ts";
import type { Chip, Pin } from "../model/chips/chip.ts";
import { chip, chipNames } from "../model/chips.ts";
import type { ReportLayout } from "../model/layouts/layout.ts";
import { formatRange, type Quantity, quantities } from "../model/quantities.ts";
import { reportLayouts } from "../model/report-layouts.ts";
import { formatSources, type Source } from "../model/sources.ts";
import type { ChipTerm, LayoutTerm, Term, Vocabulary } from "../notes/vocabulary.ts";
import { ruleIds } from "../rule-ids.ts";

/** The names that notes and edgewise.json may use, taken from the model and the catalogue of rules. */
export const vocabulary: Vocabulary = {
  chips: chipNames.flatMap((name) => chipTerm(name) ?? []),
  layouts: reportLayouts.map(layoutTerm),
  quantities: quantities.map(quantityTerm),
  rules: ruleIds.map(ruleTerm),
};

/** Ids are names for good, whether or not this version has the rule. */
function ruleTerm(id: string): Term {
  const rule = ruleOf(id);
  if (rule === undefined) return { name: id, title: "not checked by this version", documentation: "" };
  return { name: id, title: rule.title, documentation: rule.why };
}

/** The tables of a chip are large and made on first use, so its pins are as well. */
function chipTerm(name: string): ChipTerm | undefined {
  const known = chip(name);
  if (known === undefined) return undefined;
  return {
    name,
    title: known.printedName,
    documentation: "",
    printedName: known.printedName,
    uarts: known.uarts,
    get pins() {
      return pinTerms(known);
    },
  };
}

/** Every name of every pin: the board's numbering (`2`, `A3`) and the port's (`PD2`). */
function pinTerms(of: Chip): readonly Term[] {
  if (of.kind !== "avr") return [];
  return of.pins.flatMap((pin) =>
    pinNames(pin).map((name) => ({ name, title: pinTitle(pin), documentation: "" })),
  );
}

function pinNames({ name, boardNames }: Pin): readonly string[] {
  // `D2` is written `2` in notes, as in sketches.
  return [...boardNames.map((board) => board.replace(/^D(?=\d)/, "")), name];
}

function pinTitle({ name, boardNames, functions }: Pin): string {
  return [name, ...boardNames, ...functions].join(", ");
}

function layoutTerm({ name, title, side, fields, meaning, sources }: ReportLayout): LayoutTerm {
  return { name, title, side, fields, documentation: withSources(meaning, sources) };
}

function quantityTerm(quantity: Quantity): Term {
  const range = formatRange(quantity);
  return {
    name: quantity.id,
    title: range === "" ? quantity.title : `${quantity.title}: ${range}`,
    documentation: withSources(quantity.meaning, quantity.sources),
  };
}

function withSources(text: string, sources: readonly Source[]): string {
  const cited = formatSources(sources);
  return cited === "" ? text : `${text}\n\n*${cited}*`;
}
