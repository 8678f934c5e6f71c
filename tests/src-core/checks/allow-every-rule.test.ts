import { expect, test } from "vitest";
import { rules } from "../../../src-core/checks/registry.ts";
import type { Example } from "../../../src-core/checks/rule.ts";
import { editedText } from "../../../src-core/edited-text.ts";
import { hostOfFiles } from "../../../src-core/reader/source-host.ts";
import { createService } from "../../../src-core/service/create-service.ts";
import { loadGrammar } from "../reader/syntax/load-grammar.ts";

const grammar = await loadGrammar();

/** A service over the files, which were tried out or run whole, and what it finds in their project. */
function checked(files: Example, runsWhole: boolean) {
  const service = createService({ host: hostOfFiles(files), grammar, startName: "" });
  const [project] = service.projectsAt(".");
  if (project === undefined) throw new Error("an example holds no project");
  service.tryOut(project.id);
  if (runsWhole) service.runWhole(project.id);
  return { service, project: project.id, findings: service.check(project.id).findings };
}

type Checked = ReturnType<typeof checked>;

/** The files with the note that is offered at the first finding of the rule. */
function allowed(id: string, files: Example, { service, project, findings }: Checked): Example {
  const finding = findings.find(({ rule }) => rule === id);
  if (finding === undefined) throw new Error(`${id} finds nothing`);
  const allow = service
    .actions(project, finding.span)
    .find((action) => action.kind === "allow" && action.finding?.rule === id);
  if (allow === undefined) throw new Error(`no note is offered at: ${finding.message}`);
  return Object.fromEntries(
    Object.entries(files).map(([name, text]) => [
      name,
      editedText(
        text,
        allow.edits.filter(({ span }) => span.file === name),
      ),
    ]),
  );
}

/**
 * A note may accept several findings of its declaration. Where what the text shows is accepted, a run may show the same rule
 * broken elsewhere, which may be accepted there in turn.
 */
const mostNotes = 3;

// Faults of notes are mended in the note.
const aboutCode = rules.filter(({ id }) => !id.startsWith("note/"));

test.each(
  aboutCode.map((rule) => {
    const runsWhole = rule.judge !== undefined;
    return [rule.id, rule.wrong, runsWhole] as const;
  }),
)("%s: the notes that are offered accept what it finds, and none of them is idle", (id, wrong, runsWhole) => {
  let files = wrong;
  let now = checked(files, runsWhole);
  for (let notes = 0; notes === 0 || now.findings.some(({ rule }) => rule === id); notes += 1) {
    expect(notes, `still found: ${now.findings.map(({ message }) => message).join("; ")}`).toBeLessThan(
      mostNotes,
    );
    files = allowed(id, files, now);
    now = checked(files, runsWhole);
  }
  // An allow that suppresses nothing is told by note/unattached.
  expect(now.findings.filter(({ rule }) => rule.startsWith("note/"))).toEqual([]);
});
