import type { Facts } from "../../facts/facts.ts";
import type { NoteRule } from "../../notes/note-problem.ts";
import type { Draft } from "../rule.ts";

/** What reading the notes found for one of the four rules; the rules tell them apart, the reader finds them. */
export function* problemsOf(facts: Facts, rule: NoteRule): Generator<Draft> {
  for (const { rule: found, ...draft } of facts.notes.problems) {
    if (found === rule) yield draft;
  }
}
