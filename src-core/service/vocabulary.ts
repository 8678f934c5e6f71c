import type { MouseProfile } from "../bench/mice/profile.ts";
import { mice } from "../bench/mice/profiles.ts";
import type { PcProfile } from "../bench/pcs/pc-profile.ts";
import { pcProfiles } from "../bench/pcs/pc-profiles.ts";
import { type Stroke, strokeLength } from "../bench/strokes/stroke.ts";
import { sampleStrokes } from "../bench/strokes/strokes.ts";
import { second } from "../bench/time/time.ts";
import { ruleOf } from "../checks/registry.ts";
import { plain } from "../figures.ts";
import type { Chip, Pin } from "../model/chips/chip.ts";
import { chip, chipNames, printedChipName } from "../model/chips.ts";
import type { ReportLayout } from "../model/layouts/layout.ts";
import { formatLineFormat, lineFormatSource, preferredLineFormat } from "../model/line-formats.ts";
import { formatRange, type Quantity, quantities, quantity } from "../model/quantities.ts";
import { reportLayouts } from "../model/report-layouts.ts";
import { formatSource, formatSources, type Source } from "../model/sources.ts";
import type { ChipTerm, LayoutTerm, Term, Vocabulary } from "../notes/vocabulary.ts";
import { ruleIds } from "../rule-ids.ts";

/** The names that notes and edgewise.json may use, taken from the model and the catalogue of rules. */
export const vocabulary: Vocabulary = {
  chips: chipNames.flatMap((name) => chipTerm(name) ?? []),
  layouts: reportLayouts.map(layoutTerm),
  quantities: quantities.map(quantityTerm),
  rules: ruleIds.map(ruleTerm),
  lineFormats: usualLineFormats(),
  bauds: usualBauds(),
  strokes: sampleStrokes.map(strokeTerm),
  mice: mice.map(mouseTerm),
  pcs: pcProfiles.map(pcTerm),
};

function strokeTerm(stroke: Stroke): Term {
  const { name, title } = stroke;
  return { name, title, documentation: `Takes ${plain(strokeLength(stroke) / second, 2)} s.` };
}

function mouseTerm({ name, title, stresses }: MouseProfile): Term {
  const limits = stresses.flatMap((id) => {
    const of = quantity(id);
    return of === undefined ? [] : [`- \`${id}\`: ${of.title}, ${formatRange(of)}`];
  });
  return {
    name,
    title,
    documentation: limits.length === 0 ? "" : `Puts to the test:\n${limits.join("\n")}`,
  };
}

function pcTerm({ name, title, sources }: PcProfile): Term {
  return { name, title, documentation: withSources("", sources) };
}

/** What serial layouts are sent in; a PC reads a longer stop as well (`acceptance` of the model says what else). */
function usualLineFormats(): readonly Term[] {
  const terms = new Map<string, Term>();
  for (const layout of reportLayouts) {
    if (layout.side !== "serial") continue;
    const name = formatLineFormat(preferredLineFormat(layout));
    const known = terms.get(name);
    const title = known === undefined ? `for ${layout.name}` : `${known.title}, ${layout.name}`;
    terms.set(name, { name, title, documentation: formatSource(lineFormatSource) });
  }
  return [...terms.values()];
}

function usualBauds(): readonly Term[] {
  const baud = quantity("serial.baud");
  if (baud === undefined) return [];
  const usualFirst = [baud.typical, ...(baud.values ?? [])].filter((value) => value !== undefined);
  return [...new Set(usualFirst)].map((value) => ({
    name: String(value),
    title:
      value === baud.typical ? "the rate at which a PC listens first" : "a rate that some mice change to",
    documentation: withSources(baud.meaning, baud.sources),
  }));
}

/** Ids are names for good, whether or not this version has the rule. */
function ruleTerm(id: string): Term {
  const rule = ruleOf(id);
  if (rule === undefined) return { name: id, title: "not checked by this version", documentation: "" };
  return { name: id, title: rule.title, documentation: rule.why };
}

/** The tables of a chip are large and made on first use, so what is read off them is asked for when needed. */
function chipTerm(name: string): ChipTerm | undefined {
  const printedName = printedChipName(name);
  if (printedName === undefined) return undefined;
  let pins: readonly Term[] | undefined;
  return {
    name,
    title: printedName,
    documentation: "",
    printedName,
    get uarts() {
      return chip(name)?.uarts;
    },
    get pins() {
      pins ??= pinTerms(chip(name));
      return pins;
    },
  };
}

/** Every name of every pin: the board's numbering (`2`, `A3`) and the port's (`PD2`). */
function pinTerms(of: Chip | undefined): readonly Term[] {
  if (of?.kind !== "avr") return [];
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

function quantityTerm(of: Quantity): Term {
  const range = formatRange(of);
  return {
    name: of.id,
    title: range === "" ? of.title : `${of.title}: ${range}`,
    documentation: withSources(of.meaning, of.sources),
  };
}

function withSources(text: string, sources: readonly Source[]): string {
  const cited = formatSources(sources);
  return [text, cited === "" ? "" : `*${cited}*`].filter((part) => part !== "").join("\n\n");
}
