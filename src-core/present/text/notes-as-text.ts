import type { NoteProposal, ProposedNotes } from "../../note-proposal.ts";
import type { FileLines } from "../line-index.ts";
import type { Paint } from "./paint.ts";

/** Notes that would describe a project, each with the line that it belongs above. */
export function notesAsText(
  project: string,
  { proposals, untold }: ProposedNotes,
  lines: FileLines,
  paint: Paint,
): string {
  const inOrder = [...proposals].sort((a, b) => a.before.start - b.before.start);
  const files = [...new Set(proposals.map(({ before }) => before.file))];
  return [
    ...(files.length === 0
      ? [`${paint("file", project)}\n\n  No note to add: what the code tells is said.`]
      : []),
    ...files.map((file) =>
      [
        paint("file", file),
        ...inOrder.filter(({ before }) => before.file === file).map((each) => noteAsText(each, lines, paint)),
      ].join("\n\n"),
    ),
    ...(untold.length === 0 ? [] : [untoldAsText(untold, paint)]),
    "",
  ]
    .join("\n\n")
    .replace(/\n\n$/, "\n");
}

function noteAsText({ before, note, reason }: NoteProposal, lines: FileLines, paint: Paint): string {
  const index = lines.of(before.file);
  const { line } = index.placeOf(before.start);
  const width = String(line).length;
  return [
    `  ${paint("good", `// ${note}`)}`,
    `  ${paint("place", String(line))} ${paint("label", "|")} ${index.lineText(line).trim()}`,
    `  ${" ".repeat(width)} ${paint("label", `  ${reason}`)}`,
  ].join("\n");
}

function untoldAsText(untold: readonly string[], paint: Paint): string {
  return [
    paint("label", "The code does not tell:"),
    ...untold.map((each) => `  - ${each.replaceAll("`", "")}`),
  ].join("\n");
}
