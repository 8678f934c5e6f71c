import { FileLines } from "../../../src-core/present/line-index.ts";
import { notesAsText } from "../../../src-core/present/text/notes-as-text.ts";
import { coloured, plain } from "../../../src-core/present/text/paint.ts";
import type { SourceHost } from "../../../src-core/reader/source-host.ts";
import type { Service } from "../../../src-core/service/service.ts";
import { DiskFiles } from "../../files/disk-files.ts";
import type { Command } from "../command.ts";
import { exitStatus } from "../exit-status.ts";
import { projectsOf, seenFrom } from "../projects-at.ts";
import { renameNotes } from "./rename-notes.ts";

/** `edgewise notes`. */
export function notesCommand(makeService: (host: SourceHost) => Promise<Service>): Command {
  return {
    name: "notes",
    operands: "[PATH...]",
    summary: "Prints the wire notes that would describe the firmware, and what only its author can say.",
    options: [],
    details: [
      "Each note is followed by the line that it belongs above, and by what in the code tells it.",
      "Nothing is written into any file.",
    ],
    async run({ operands }, { workingFolder, stdout, colours }) {
      const files = new DiskFiles(workingFolder);
      const service = await makeService(files);
      const lines = new FileLines((file) => files.readText(file));
      const asSeenFromHere = seenFrom(workingFolder);
      const paths = operands.length === 0 ? ["."] : operands;
      const told = projectsOf(service, paths, workingFolder).map(({ id }) =>
        notesAsText(
          asSeenFromHere(id),
          renameNotes(service.notes(id), asSeenFromHere),
          lines,
          colours ? coloured : plain,
        ),
      );
      stdout(told.join("\n"));
      return exitStatus.clean;
    },
  };
}
