import { type BaudGenerator, baudGeneratorNamed } from "../../model/baud-generators.ts";
import type { AvrChip, Chip, DataModelName, Pin } from "../../model/chips/chip.ts";
import { chip, chipNames, printedChipName } from "../../model/chips.ts";
import { citation } from "./citation.ts";
import { type Entry, type Part, type Topic, texts } from "./topic.ts";

/** The chips that notes may name. */
export function chipEntries(): readonly Entry[] {
  return chipNames.flatMap((name) => {
    const known = chip(name);
    return known === undefined
      ? []
      : [{ words: [name, printedChipName(name) ?? name], topic: () => chipTopic(known) }];
  });
}

function chipTopic(of: Chip): Topic {
  const generators = of.baudGenerators.flatMap((id) => baudGeneratorNamed(id) ?? []);
  return {
    name: of.name,
    kind: "chip",
    title: of.printedName,
    parts: [
      ...texts(
        integerText[of.dataModel],
        of.uarts === undefined ? undefined : uartText(of.uarts),
        of.kind === "avr"
          ? memoryText(of)
          : "Registers and pins of this chip are not known to Edgewise; its baud set-up is.",
      ),
      ...generatorList(generators),
      ...(of.kind === "avr" ? pinTable(of) : []),
      ...texts(citation([...of.sources, ...generators.flatMap(({ sources }) => sources)])),
    ],
    related: ["serial/baud-error", "board/divisor-range", "board/pin-no-interrupt"],
  };
}

const integerText: Readonly<Record<DataModelName, string | undefined>> = {
  avr: "`int` has 16 bits, `long` 32: 65536 and 40 * 1000 do not fit an `int`.",
  ilp32: "`int` and `long` have 32 bits.",
  unknown: undefined,
};

function uartText(uarts: readonly number[]): string {
  if (uarts.length === 0)
    return "It has no UART: a serial line is made by the program, or by its USI or a timer.";
  return `UARTs that \`uart=\` may name: ${uarts.join(", ")}.`;
}

function memoryText({ memory: { ramStart, ramEnd, flashEnd } }: AvrChip): string {
  return `${(flashEnd + 1) / 1024} KiB of flash, ${ramEnd - ramStart + 1} bytes of RAM.`;
}

function generatorList(generators: readonly BaudGenerator[]): readonly Part[] {
  if (generators.length === 0) return [];
  return [
    {
      kind: "list",
      items: generators.map(({ title, formula, samplings }) => {
        const [first] = samplings;
        const range = first === undefined ? "" : `, ${first.registerRange.min} to ${first.registerRange.max}`;
        return `baud from ${title}: \`${formula}\`${range}`;
      }),
    },
  ];
}

/** Pins that an interrupt can watch, as an adapter's clock line needs one. */
function pinTable({ pins }: AvrChip): readonly Part[] {
  const watched = pins.filter((pin) => pin.externalInterrupt !== undefined || pin.pinChange !== undefined);
  if (watched.length === 0) return [];
  return [
    { kind: "text", text: "Pins that an interrupt can watch, as the PS/2 clock needs one:" },
    { kind: "table", head: ["pin", "board", "interrupt", "vector"], rows: watched.map(pinRow) },
  ];
}

function pinRow({ name, boardNames, externalInterrupt, pinChange }: Pin): readonly string[] {
  const best = externalInterrupt ?? pinChange;
  const names = [externalInterrupt?.name, pinChange?.name].filter((each) => each !== undefined);
  return [name, boardNames.join(" "), names.join(" "), best?.vector ?? ""];
}
