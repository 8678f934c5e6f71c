import type { Span } from "../../../src-core/finding.ts";
import type { ProposedNotes } from "../../../src-core/note-proposal.ts";

/** The same notes with every file under another name. */
export function renameNotes(
  { proposals, untold }: ProposedNotes,
  nameOf: (file: string) => string,
): ProposedNotes {
  const renamed = (span: Span): Span => ({ ...span, file: nameOf(span.file) });
  return {
    proposals: proposals.map((each) => ({
      ...each,
      span: renamed(each.span),
      before: renamed(each.before),
    })),
    untold,
  };
}
