import { completeNote } from "../notes/completion/complete-note.ts";
import { completeSettings } from "../notes/completion/complete-settings.ts";
import type { ProjectReading } from "./project-reading.ts";
import type { Completion } from "./service.ts";
import { vocabulary } from "./vocabulary.ts";

/** What can be written at an offset of a note or of edgewise.json. */
export function completeAt(
  { project, facts, files }: ProjectReading,
  file: string,
  offset: number,
  text: string,
): readonly Completion[] {
  if (file === project.settings.file) return completeSettings(file, text, offset, vocabulary);
  const lexed = files.get(file);
  if (lexed === undefined) return [];
  return completeNote(lexed, offset, { vocabulary, chip: facts.wires.board.chip?.value });
}
