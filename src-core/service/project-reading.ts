import { editedText } from "../edited-text.ts";
import type { Facts } from "../facts/facts.ts";
import { gatherFacts } from "../facts/gather-facts.ts";
import type { Edit } from "../finding.ts";
import { chip } from "../model/chips.ts";
import { type NoteFacts, readNoteFacts, readWires } from "../notes/note-facts.ts";
import type { BoardWords } from "../notes/wires.ts";
import type { Project } from "../project/project.ts";
import type { LexedFile } from "../reader/lexer/lexed-file.ts";
import type { Language } from "../reader/lexer/scanner.ts";
import type { Program } from "../reader/program/program.ts";
import { ProgramCache } from "../reader/program/program-cache.ts";
import { readProgram } from "../reader/program/read-program.ts";
import type { SourceHost } from "../reader/source-host.ts";
import type { Grammar } from "./grammar.ts";
import { vocabulary } from "./vocabulary.ts";

/** A project's code and notes as they were read together. */
export interface ProjectReading {
  readonly project: Project;
  readonly facts: Facts;
  /** Workspace files that were read, by path, each once. */
  readonly files: ReadonlyMap<string, LexedFile>;
  /** The project as it would be after changes of its text, which must not overlap; nothing is written. */
  readonly edited: (edits: readonly Edit[]) => ProjectReading;
}

/** Reads one project again and again; what did not change between two readings is not read twice. */
export class ProjectReader {
  readonly #host: SourceHost;
  readonly #grammar: Grammar;
  readonly #cache = new ProgramCache();
  /** What the notes of the last reading said of the board. */
  #board: BoardWords | undefined;

  constructor(host: SourceHost, grammar: Grammar) {
    this.#host = host;
    this.#grammar = grammar;
  }

  read(project: Project): ProjectReading {
    // The chip decides which registers and headers there are, and the note about it may stand in a header, or
    // in a group that only the reading itself finds skipped: so it is guessed, and read again where that was wrong.
    const guess = this.#board ?? this.#boardInMains(project);
    const first = this.#readWith(project, guess);
    const said = first.notes.wires.board;
    this.#board = said;
    const { program, notes, files } = sameBoard(guess, said) ? first : this.#readWith(project, said);
    return { project, facts: gatherFacts(program, notes), files, edited: this.#editor(project) };
  }

  /** The reader of changed texts is another, so that this one's caches stay those of the real texts. */
  #editor(project: Project): ProjectReading["edited"] {
    const host = new EditedFiles(this.#host);
    let reader: ProjectReader | undefined;
    return (edits) => {
      host.edits = edits;
      reader ??= new ProjectReader(host, this.#grammar);
      return reader.read(project);
    };
  }

  #readWith(project: Project, board: BoardWords): Read {
    const program = readProgram({
      host: this.#host,
      grammar: this.#grammar,
      cache: this.#cache,
      units: project.units,
      includePaths: project.includePaths,
      defines: project.defines,
      chip: board.chip === undefined ? undefined : chip(board.chip.value),
      clockHz: board.clockHz?.value,
    });
    const files = this.#lexed(languagesOf(program));
    const notes = readNoteFacts(files.values(), program.units, project.settings, vocabulary);
    return { program, notes, files };
  }

  #boardInMains({ units, settings }: Project): BoardWords {
    const languages = units.flatMap(({ mains, language }) =>
      mains.map((file): [string, Language] => [file, language]),
    );
    const comments = [...this.#lexed(new Map(languages)).values()].flatMap((lexed) => lexed.comments);
    return readWires(comments, settings, vocabulary).board;
  }

  #lexed(languages: ReadonlyMap<string, Language>): ReadonlyMap<string, LexedFile> {
    const files = new Map<string, LexedFile>();
    for (const [file, language] of languages) {
      const text = this.#host.readText(file);
      if (text !== undefined) files.set(file, this.#cache.preprocess.lexer.lex(file, text, language));
    }
    return files;
  }
}

/** Files with changes that nobody has written. */
class EditedFiles implements SourceHost {
  readonly #files: SourceHost;
  edits: readonly Edit[] = [];

  constructor(files: SourceHost) {
    this.#files = files;
  }

  readText(path: string): string | undefined {
    const text = this.#files.readText(path);
    const own = this.edits.filter(({ span }) => span.file === path);
    return text === undefined || own.length === 0 ? text : editedText(text, own);
  }

  listFolder(path: string): readonly string[] {
    return this.#files.listFolder(path);
  }

  get ignoresCase(): boolean {
    return this.#files.ignoresCase === true;
  }
}

interface Read {
  readonly program: Program;
  readonly notes: NoteFacts;
  readonly files: ReadonlyMap<string, LexedFile>;
}

/** A header that C and C++ sources share is taken as the first of them takes it. */
function languagesOf(program: Program): ReadonlyMap<string, Language> {
  const languages = new Map<string, Language>();
  for (const { preprocessed, language } of program.units) {
    for (const file of preprocessed.files) if (!languages.has(file)) languages.set(file, language);
  }
  return languages;
}

function sameBoard(one: BoardWords, other: BoardWords): boolean {
  return one.chip?.value === other.chip?.value && one.clockHz?.value === other.clockHz?.value;
}
