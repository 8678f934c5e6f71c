import { consequencesOf, runRules } from "../checks/run-rules.ts";
import type { Finding, RuleLevel, Span } from "../finding.ts";
import type { RunFault } from "../firmware-run.ts";
import { allowancesOf } from "../notes/allow/apply-allows.ts";
import type { ProjectReading } from "./project-reading.ts";

/** Faults of a run, parted by whether their author has accepted them. */
export interface PartedFaults {
  readonly open: readonly RunFault[];
  /** Their rule is off, they are allowed where they stand or where the text shows them, or they follow from such a fault. */
  readonly accepted: readonly RunFault[];
}

/** Tells accepted faults from others as the findings of a check do. `levels` are those that the project sets. */
export class AcceptedFaults {
  readonly #reading: ProjectReading;
  readonly #levels: ReadonlyMap<string, RuleLevel>;
  #allowedInText: readonly Finding[] | undefined;

  constructor(reading: ProjectReading, levels: ReadonlyMap<string, RuleLevel>) {
    this.#reading = reading;
    this.#levels = levels;
  }

  part(faults: readonly RunFault[]): PartedFaults {
    const own = faults.filter((fault) => this.#isAccepted(fault));
    const causes = [...own, ...(faults.length === 0 ? [] : this.#inText())];
    const follow = new Set(causes.flatMap(({ rule }) => [...consequencesOf(rule)]));
    const accepted = faults.filter((fault) => own.includes(fault) || follow.has(fault.rule));
    return { open: faults.filter((fault) => !accepted.includes(fault)), accepted };
  }

  #isAccepted({ rule, span }: RunFault): boolean {
    const { allowances } = this.#reading.facts.notes;
    if (this.#levels.get(rule) === "off" || allowancesOf({ rule, span }, allowances).length > 0) return true;
    return this.#inText().some(
      (each) => each.rule === rule && [each, ...each.related].some((place) => touches(place.span, span)),
    );
  }

  #inText(): readonly Finding[] {
    const { facts } = this.#reading;
    const { allowances } = facts.notes;
    if (allowances.length === 0) return [];
    this.#allowedInText ??= runRules(facts, this.#levels).findings.filter(
      (each) => allowancesOf(each, allowances).length > 0,
    );
    return this.#allowedInText;
  }
}

function touches(one: Span, other: Span): boolean {
  return one.file === other.file && one.start < other.end && other.start < one.end;
}
