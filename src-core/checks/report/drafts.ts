import type { Fix } from "../../finding.ts";
import { formatSources } from "../../model/sources.ts";
import { visibleRange } from "../../reader/tokens.ts";
import type { FaultKind, ReportFault, ReportTrial } from "../../reports/report-trial.ts";
import { spanOf } from "../literal.ts";
import type { Draft } from "../rule.ts";

/** What the rules of this group say about themselves; a finding names the documents of its own layout. */
export const sourceOfLayouts =
  "the tables of the report layouts; each finding names the documents of its layout";

/** What is found of one kind: one draft for each place. */
export function* draftsOf(kind: FaultKind, reports: readonly ReportTrial[]): Generator<Draft> {
  for (const trial of reports) {
    const byPlace = new Map<string, ReportFault[]>();
    for (const fault of trial.faults.filter((each) => each.kind === kind)) {
      const key = JSON.stringify(spanOfFault(fault));
      byPlace.set(key, [...(byPlace.get(key) ?? []), fault]);
    }
    for (const faults of byPlace.values()) {
      const [first] = faults;
      if (first !== undefined) yield draftOf(trial, first, faults);
    }
  }
}

function draftOf({ note, layout }: ReportTrial, first: ReportFault, faults: readonly ReportFault[]): Draft {
  const { given, came, right } = first.example;
  const what = faults.map((fault) => fault.what).join("; ");
  const makes =
    note.kind === "encodes" ? `sends ${came}, and ${right} is right` : `is read as ${came}, and is ${right}`;
  return {
    span: spanOfFault(first),
    message: `${what}: ${given} ${makes}`,
    source: formatSources(layout.sources),
    related: [{ span: spanOf(note.span), message: "what the note says of the report" }],
    fixes: sharedFixes(faults),
  };
}

function spanOfFault({ at }: ReportFault) {
  return spanOf(visibleRange(at.first, at.last));
}

/** Several faults at one place are one finding, which only a change that mends all of them removes. */
function sharedFixes([first, ...others]: readonly ReportFault[]): readonly Fix[] {
  const key = ({ edits }: Fix): string => JSON.stringify(edits);
  return (first?.fixes ?? []).filter((fix) =>
    others.every(({ fixes }) => fixes.some((each) => key(each) === key(fix))),
  );
}
