import type { ChipTerm, Vocabulary } from "../vocabulary.ts";

/** The chip of that name, upper and lower case alike: part numbers are printed one way and typed the other. */
export function chipNamed(name: string, vocabulary: Vocabulary): ChipTerm | undefined {
  const lower = name.toLowerCase();
  return vocabulary.chips.find(
    (chip) => chip.name.toLowerCase() === lower || chip.printedName.toLowerCase() === lower,
  );
}
