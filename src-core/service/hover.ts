import { explainAt } from "../explain/explain-at.ts";
import { hoverSettings } from "../notes/completion/complete-settings.ts";
import { hoverNote } from "../notes/completion/hover-note.ts";
import type { ProjectReading } from "./project-reading.ts";
import type { Hover, TrialResult } from "./service.ts";
import { vocabulary } from "./vocabulary.ts";

/** What stands at an offset of one of the project's files, explained; undefined where there is nothing to say. */
export function hoverAt(
  { project, facts, files }: ProjectReading,
  file: string,
  offset: number,
  text: string,
  tried: TrialResult | undefined,
): Hover | undefined {
  if (file === project.settings.file) return hoverSettings(file, text, offset, vocabulary);
  const lexed = files.get(file);
  if (lexed === undefined) return undefined;
  const chip = facts.wires.board.chip?.value;
  return hoverNote(lexed, offset, { vocabulary, chip }) ?? explainAt(facts, file, offset, tried?.reports);
}
