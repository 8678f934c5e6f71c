import { runRules } from "../checks/run-rules.ts";
import type { Facts } from "../facts/facts.ts";
import type { RuleLevel } from "../finding.ts";
import type { EditedFirmware, Mending } from "../reports/mend/mend-reports.ts";
import type { ProjectReading } from "./project-reading.ts";

/** What finding fixes by trial needs of a project. */
export function mendingOf(
  { facts, files, edited }: ProjectReading,
  cancelled: (() => boolean) | undefined,
): Mending {
  let known: ReadonlySet<string> | undefined;
  return {
    textOf: (file) => files.get(file)?.text,
    reread: (edits): EditedFirmware => {
      const { facts: now } = edited(edits);
      return {
        program: now.program,
        notes: now.notes,
        hasNewFault: () => {
          known ??= faultsOf(facts);
          const before = known;
          return [...faultsOf(now)].some((fault) => !before.has(fault));
        },
      };
    },
    cancelled,
  };
}

const ownLevels: ReadonlyMap<string, RuleLevel> = new Map();

/** What the text alone shows, without places, as these move with a change. */
function faultsOf(facts: Facts): ReadonlySet<string> {
  const { findings } = runRules(facts, ownLevels);
  return new Set([...facts.program.problems, ...findings].map(({ message }) => message));
}
