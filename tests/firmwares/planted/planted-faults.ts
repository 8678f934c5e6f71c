import { endlessWaits, ignoredAnswers, noWayBack, shortWaits, uncheckedParity } from "./conversation.ts";
import { lateChanges, missedEdges, wrongParity, wrongSamples } from "./edges.ts";
import { drivenHigh, shortHolds } from "./holds-and-drives.ts";
import { ignoredLines, lateIdentification, noIdentification, wrongIdentification } from "./identification.ts";
import { deafWhileSending, lostCounts, tornVariables } from "./lost-on-the-way.ts";
import type { PlantedFault } from "./planted-fault.ts";
import { fullLine, wrongBits, wrongRest } from "./serial-line.ts";

/** All of them, rule by rule. */
export const plantedFaults: readonly PlantedFault[] = [
  ...shortHolds,
  ...drivenHigh,
  ...lateChanges,
  ...wrongSamples,
  ...missedEdges,
  ...wrongParity,
  ...ignoredAnswers,
  ...shortWaits,
  ...endlessWaits,
  ...noWayBack,
  ...uncheckedParity,
  ...wrongBits,
  ...wrongRest,
  ...fullLine,
  ...noIdentification,
  ...lateIdentification,
  ...wrongIdentification,
  ...ignoredLines,
  ...deafWhileSending,
  ...lostCounts,
  ...tornVariables,
];
