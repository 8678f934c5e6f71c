import type { Facts } from "../facts/facts.ts";
import { gatherFacts } from "../facts/gather-facts.ts";
import { chip } from "../model/chips.ts";
import { readNoteFacts, readWires } from "../notes/note-facts.ts";
import type { Wires } from "../notes/wires.ts";
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
}

/** Reads one project again and again; what did not change between two readings is not read twice. */
export class ProjectReader {
  readonly #host: SourceHost;
  readonly #grammar: Grammar;
  readonly #cache = new ProgramCache();
  /** Files of the last reading and their languages: where notes about the board are looked for first. */
  #known: ReadonlyMap<string, Language> = new Map();

  constructor(host: SourceHost, grammar: Grammar) {
    this.#host = host;
    this.#grammar = grammar;
  }

  read(project: Project): ProjectReading {
    const mains = project.units.flatMap(({ mains, language }) =>
      mains.map((file): [string, Language] => [file, language]),
    );
    const before = this.#wiresOf(project, new Map([...this.#known, ...mains]));
    const first = this.#readWith(project, before);
    // The chip decides which registers and headers there are, and a note about it may stand in a header that
    // only the reading itself has found.
    const after = this.#wiresOf(project, languagesOf(first));
    const program = sameTarget(before, after) ? first : this.#readWith(project, after);
    const files = this.#lexed(languagesOf(program));
    this.#known = languagesOf(program);
    const notes = readNoteFacts(files.values(), program.units, project.settings, vocabulary);
    return { project, facts: gatherFacts(program, notes), files };
  }

  #readWith(project: Project, { board }: Wires): Program {
    return readProgram({
      host: this.#host,
      grammar: this.#grammar,
      cache: this.#cache,
      units: project.units,
      includePaths: project.includePaths,
      defines: project.defines,
      chip: board.chip === undefined ? undefined : chip(board.chip.value),
      clockHz: board.clockHz?.value,
    });
  }

  #wiresOf(project: Project, languages: ReadonlyMap<string, Language>): Wires {
    const comments = [...this.#lexed(languages).values()].flatMap((lexed) => lexed.comments);
    return readWires(comments, project.settings, vocabulary);
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

/** A header that C and C++ sources share is taken as the first of them takes it. */
function languagesOf(program: Program): ReadonlyMap<string, Language> {
  const languages = new Map<string, Language>();
  for (const { preprocessed, language } of program.units) {
    for (const file of preprocessed.files) if (!languages.has(file)) languages.set(file, language);
  }
  return languages;
}

function sameTarget(one: Wires, other: Wires): boolean {
  return (
    one.board.chip?.value === other.board.chip?.value &&
    one.board.clockHz?.value === other.board.clockHz?.value
  );
}
