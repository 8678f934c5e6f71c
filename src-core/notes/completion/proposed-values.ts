import { LAYOUT_FIELDS } from "../grammar/check-value.ts";
import type { NamedValue } from "../grammar/directives.ts";
import { VALUE_SHAPES } from "../grammar/value-kinds.ts";
import { BUTTONS } from "../note.ts";
import { chipNamed } from "../values/chip.ts";
import type { Term, Vocabulary } from "../vocabulary.ts";
import type { CompletionKind, Proposal } from "./completion.ts";

/** What completion and hovers know besides the note itself. */
export interface NoteKnowledge {
  readonly vocabulary: Vocabulary;
  /** The project's chip, for its pins; undefined where it is not known. */
  readonly chip: string | undefined;
}

/** Clocks that boards run at; any other may be written. Common practice, no source. */
const USUAL_CLOCKS: readonly string[] = ["16MHz", "8MHz", "20MHz", "12MHz", "1MHz"];

/** Scales that are worth proposing; any other may be written. */
const USUAL_SCALES: readonly string[] = ["1/2", "2"];

/** The values that `named` can take; `names` are those of the code below the note. */
export function proposedValues(
  named: NamedValue,
  knowledge: NoteKnowledge,
  names: readonly string[],
): readonly Proposal[] {
  const { vocabulary, chip } = knowledge;
  const { value } = named;
  switch (value.kind) {
    case "chip":
      return fromTerms(vocabulary.chips, "chip");
    case "layout":
      return fromTerms(
        vocabulary.layouts.filter((layout) => value.side === "either" || layout.side === value.side),
        "value",
      );
    case "quantity":
      return fromTerms(vocabulary.quantities, "value");
    case "rule":
      return fromTerms(vocabulary.rules, "rule");
    case "pin":
      return chip === undefined ? [] : fromTerms(chipNamed(chip, vocabulary)?.pins ?? [], "pin");
    case "uart": {
      const uarts = chip === undefined ? [0] : (chipNamed(chip, vocabulary)?.uarts ?? [0]);
      return plain(uarts.map(String), named.documentation);
    }
    case "choice":
      return value.choices.map(({ name, documentation }) => ({
        label: name,
        kind: "value",
        detail: documentation,
        documentation: "",
      }));
    case "buttons":
      return plain(BUTTONS, named.documentation);
    case "reason":
      return [{ label: '"..."', kind: "value", detail: named.documentation, documentation: "", text: '""' }];
    case "path":
    case "operand":
      return plain(names, "a parameter of the function below");
    case "line":
      return fromTerms(vocabulary.lineFormats, "value");
    case "baud":
      return fromTerms(vocabulary.bauds, "value");
    case "clock":
      return plain(USUAL_CLOCKS, named.documentation);
    case "scale":
      return plain(USUAL_SCALES, named.documentation);
    case "counts":
      return [];
  }
}

/** The fields of a layout that are not said yet. */
export function proposedFields(
  layoutName: string | undefined,
  taken: readonly string[],
  { vocabulary }: NoteKnowledge,
): readonly Proposal[] {
  const layout = vocabulary.layouts.find((each) => each.name === layoutName);
  return (layout?.fields ?? LAYOUT_FIELDS)
    .filter((field) => !taken.includes(field))
    .map((field) => ({
      label: field,
      kind: "field",
      detail: layout === undefined ? "a field of the report" : `a field of ${layout.name}`,
      documentation: "",
      text: `${field}=`,
    }));
}

/** What a value means, in Markdown; its form where it is no name. */
export function valueMeaning(named: NamedValue, text: string, knowledge: NoteKnowledge): string {
  const known = proposedValues(named, knowledge, []).find(
    (each) => each.label.toLowerCase() === text.toLowerCase(),
  );
  const { what } = VALUE_SHAPES[named.value.kind];
  if (known === undefined) return `\`${named.name}\`: ${named.documentation}\n\nWritten as ${what}.`;
  const lines = [`**${known.label}**: ${known.detail}`];
  if (known.documentation !== "" && known.documentation !== known.detail) lines.push(known.documentation);
  if (known.detail !== named.documentation) lines.push(`\`${named.name}\`: ${named.documentation}`);
  return lines.join("\n\n");
}

function fromTerms(terms: readonly Term[], kind: CompletionKind): readonly Proposal[] {
  return terms.map(({ name, title, documentation }) => ({ label: name, kind, detail: title, documentation }));
}

function plain(values: readonly string[], detail: string): readonly Proposal[] {
  return values.map((label) => ({ label, kind: "value", detail, documentation: "" }));
}
