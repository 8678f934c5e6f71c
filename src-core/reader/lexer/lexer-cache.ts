import type { Comment } from "../tokens.ts";
import { lexFile } from "./lex-file.ts";
import type { LexedFile } from "./lexed-file.ts";
import type { Language } from "./scanner.ts";

/** Keeps for each file its last lexed text, so that reading an unchanged file again costs nothing. */
export class LexerCache {
  private readonly files = new Map<string, LexedFile>();

  /** `text` as read now; lexed anew only if it is not the text of last time. */
  lex(file: string, text: string, language: Language): LexedFile {
    const key = `${language} ${file}`;
    const kept = this.files.get(key);
    if (kept !== undefined && kept.text === text) return kept;
    const lexed = lexFile(file, text, language);
    this.files.set(key, lexed);
    return lexed;
  }

  /** Comments of a file in order, those of skipped `#if` groups included. */
  comments(file: string, text: string, language: Language): readonly Comment[] {
    return this.lex(file, text, language).comments;
  }
}
