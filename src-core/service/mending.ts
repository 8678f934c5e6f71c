import { runRules } from "../checks/run-rules.ts";
import { editedText } from "../edited-text.ts";
import type { Facts } from "../facts/facts.ts";
import type { Edit, RuleLevel } from "../finding.ts";
import type { SourceHost } from "../reader/source-host.ts";
import { type EditedFirmware, type Mending } from "../reports/mend/mend-reports.ts";
import type { Grammar } from "./grammar.ts";
import { ProjectReader, type ProjectReading } from "./project-reading.ts";

/** Reads a project as it would be after changes of its text; nothing is written. */
export function mendingOf(
  { project, facts, files }: ProjectReading,
  host: SourceHost,
  grammar: Grammar,
  cancelled: (() => boolean) | undefined,
): Mending {
  let edits: readonly Edit[] = [];
  const overlay: SourceHost = {
    readText: (path) => {
      const text = host.readText(path);
      const own = edits.filter(({ span }) => span.file === path);
      return text === undefined || own.length === 0 ? text : editedText(text, own);
    },
    listFolder: (path) => host.listFolder(path),
  };
  const reader = new ProjectReader(overlay, grammar);
  let known: ReadonlySet<string> | undefined;
  return {
    textOf: (file) => files.get(file)?.text,
    reread: (wanted): EditedFirmware => {
      edits = wanted;
      const edited = reader.read(project).facts;
      return {
        program: edited.program,
        notes: edited.notes,
        hasNewFault: () => {
          known ??= faultsOf(facts);
          const before = known;
          return [...faultsOf(edited)].some((fault) => !before.has(fault));
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
  const said = [...facts.program.problems, ...findings].map(({ message }) => message);
  return new Set(said);
}
