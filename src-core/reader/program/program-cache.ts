import type { Chip } from "../../model/chips/chip.ts";
import { ChunkCache } from "../chunks/chunk.ts";
import type { Language } from "../lexer/scanner.ts";
import { PreprocessCache } from "../preprocess/preprocess-cache.ts";
import { SyntaxCache } from "../syntax/syntax-cache.ts";
import type { Typing } from "../typed/type-unit.ts";
import type { ProgramUnit } from "./program.ts";
import type { HostJournal } from "./recording-host.ts";

/** Text of a built-in header by its name. */
export type StandIns = (name: string) => string | undefined;

/** A unit of last time, and what has to be as it was for it to stand. */
export interface KeptUnit {
  /** The request and the surroundings it was read in, as text. */
  readonly circumstances: string;
  readonly journal: HostJournal;
  readonly unit: ProgramUnit;
  readonly typing: Typing;
}

/** What is kept between readings of one project: lexed files, parsed chunks, whole units. */
export class ProgramCache {
  readonly preprocess = new PreprocessCache();
  readonly chunks = new ChunkCache();
  readonly syntax = new SyntaxCache();
  /** By main files. */
  readonly units = new Map<string, KeptUnit>();
  #lasting: { readonly units: readonly object[]; readonly name: object } = { units: [], name: {} };
  readonly #standIns = new Map<string, StandIns>();

  /** What names these units together as long as all their declarations stay. */
  lasting(units: readonly ProgramUnit[]): object {
    const now = units.map(({ typed }) => typed.lasting);
    const { units: last } = this.#lasting;
    const isSame = now.length === last.length && now.every((each, index) => each === last[index]);
    if (!isSame) this.#lasting = { units: now, name: {} };
    return this.#lasting.name;
  }

  /** The stand-in headers of a chip: the same function each time, so that what was read with it stands. */
  standIns(
    chip: Chip | undefined,
    language: Language,
    make: (chip: Chip | undefined, language: Language) => StandIns,
  ): StandIns {
    const key = `${language} ${chip?.name ?? ""}`;
    const made = this.#standIns.get(key) ?? make(chip, language);
    this.#standIns.set(key, made);
    return made;
  }
}
