import { nearestNames } from "../../near-names.ts";
import { byteEntries } from "./bytes.ts";
import { chipEntries } from "./chips.ts";
import { layoutEntries } from "./layouts.ts";
import { lineFormatEntry } from "./line-formats.ts";
import { quantityEntries } from "./quantities.ts";
import { type RuleWords, ruleEntries } from "./rules.ts";
import type { Entry, Topic } from "./topic.ts";

export type FoundTopics =
  | { readonly kind: "topics"; readonly topics: readonly [Topic, ...Topic[]] }
  /** No topic has this name; `near` has names that may have been meant, nearest first. */
  | { readonly kind: "unknown"; readonly near: readonly string[] };

/** Everything that can be asked for. `rules` are those that there are. */
export class TopicBook {
  readonly #entries: readonly Entry[];

  constructor(rules: readonly RuleWords[]) {
    this.#entries = [
      ...byteEntries(),
      ...quantityEntries(),
      ...layoutEntries(),
      ...chipEntries(),
      ...ruleEntries(rules),
    ];
  }

  /** Every topic, each once, in the order of the protocols. Line formats are topics too, but too many to list. */
  all(): readonly Topic[] {
    return this.#entries.map((entry) => entry.topic());
  }

  /**
   * Topics of a word, each meaning its own: FE is a command and a reply. Capitals and the blanks around it do not
   * matter; a rule or a quantity may be asked for without its group.
   */
  find(word: string): FoundTopics {
    const wanted = word.trim().replace(/\s+/g, " ");
    const format = lineFormatEntry(wanted);
    const found = [
      ...(format === undefined ? [] : [format]),
      ...this.#entries.filter(({ words }) => words.some((each) => isCalled(each, wanted))),
    ].map((entry) => entry.topic());
    const [first, ...rest] = found;
    if (first !== undefined) return { kind: "topics", topics: [first, ...rest] };
    return { kind: "unknown", near: nearWords(wanted, this.#entries) };
  }
}

/** A single letter is one of two characters; of longer words capitals do not matter. */
function isCalled(word: string, wanted: string): boolean {
  if (wanted.length === 1) return word === wanted;
  const lower = wanted.toLowerCase();
  const known = word.toLowerCase();
  return known === lower || known.split(/[./]/)[1] === lower;
}

/** A byte that is none is not near to another. */
function nearWords(wanted: string, entries: readonly Entry[]): readonly string[] {
  if (/^(0x)?[0-9a-f]{1,2}$/i.test(wanted)) return [];
  const words = new Set(entries.flatMap((entry) => entry.words));
  return nearestNames(wanted, [...words]);
}
