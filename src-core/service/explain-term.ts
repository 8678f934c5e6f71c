import { rules } from "../checks/registry.ts";
import { type FoundTopics, TopicBook } from "../explain/topics/find-topics.ts";

export type { FoundTopics };

let book: TopicBook | undefined;

/** What a command byte, quantity, layout, line format, chip or rule is, by its name. Needs no project. */
export function explainTerm(word: string): FoundTopics {
  return topicBook().find(word);
}

/** Everything that `explainTerm` knows; made on first use. */
export function topicBook(): TopicBook {
  book ??= new TopicBook(rules);
  return book;
}
