import { hexText } from "../../figures.ts";
import { baudGeneratorNamed } from "../../model/baud-generators.ts";
import { chip, chipNames } from "../../model/chips.ts";
import { formatConfidence, formatSources } from "../../model/sources.ts";
import { escaped, list, page, table } from "../markdown/markdown.ts";
import type { ReferencePage } from "./page.ts";

export function chips(): ReferencePage {
  const title = "Chips and their baud rates";
  const known = chipNames.flatMap((name) => chip(name) ?? []);
  const generators = [...new Set(known.flatMap(({ baudGenerators }) => baudGenerators))].flatMap(
    (id) => baudGeneratorNamed(id) ?? [],
  );
  return {
    name: "chips.md",
    title,
    about: "every chip that `@wire board` may name, and the formula of every baud generator",
    pictures: [],
    text: page([
      `# ${title}`,
      "`edgewise explain atmega328p` says more of a chip: its memory, and the pins that an interrupt can watch.",
      "## Chips with registers and pins",
      list(
        known.flatMap(({ kind, name, printedName, uarts }) =>
          kind === "avr" ? [`\`${name}\` (${printedName}): ${uartText(uarts)}`] : [],
        ),
      ),
      "## Chips known by their family",
      "Their integers and their baud set-up are known; their registers and pins are not.",
      list(
        known.flatMap(({ kind, name, printedName }) =>
          kind === "named" ? [`\`${name}\` (${printedName})`] : [],
        ),
      ),
      "## Baud generators",
      table(
        ["generator", "baud", "register", "where it stands"],
        generators.map(({ title: words, formula, register, samplings, sources, confidence }) => [
          escaped(words),
          `\`${formula}\``,
          samplings
            .map(
              ({ id, registerRange: { min, max } }) =>
                `\`${register}\` ${min} to ${max} (${hexText(max)}) with \`${id}\``,
            )
            .join("; "),
          escaped([formatSources(sources), formatConfidence(confidence)].filter(Boolean).join("; ")),
        ]),
      ),
    ]),
  };
}

function uartText(uarts: readonly number[] | undefined): string {
  if (uarts === undefined || uarts.length === 0) return "no UART";
  return uarts.length === 1 ? `UART ${uarts[0]}` : `UARTs ${uarts.join(", ")}`;
}
