import { existsSync, readFileSync } from "node:fs";
import { dirname, relative, resolve } from "node:path";
import type { CheckResult } from "../../../src-core/check-result.ts";
import type { Finding } from "../../../src-core/finding.ts";
import { FileLines } from "../../../src-core/present/line-index.ts";
import {
  applyBaseline,
  type Baseline,
  baselineText,
  readBaseline,
} from "../../../src-core/service/baseline.ts";
import { ruleDescriptions } from "../../../src-core/service/rule-descriptions.ts";
import { decodeText } from "../../files/decode-text.ts";
import { errorCode, reasonOf } from "../../files/disk-faults.ts";
import { CannotDo } from "../cannot-do.ts";
import type { Surroundings } from "../command.ts";
import { writeOutput } from "../write-output.ts";

/** A baseline on disk. Its entries name files as seen from its folder, so that it serves wherever it is used from. */
export class BaselineFile {
  /** As the user wrote it. */
  readonly #name: string;
  readonly #place: string;
  readonly #surroundings: Surroundings;
  readonly #lineOf: (finding: Finding) => string;

  constructor(name: string, lines: FileLines, surroundings: Surroundings) {
    this.#name = name;
    this.#place = resolve(surroundings.workingFolder, name);
    this.#surroundings = surroundings;
    this.#lineOf = ({ span }) => {
      const index = lines.of(span.file);
      return index.lineText(index.placeOf(span.start).line);
    };
  }

  /** Accepts all that was found. Throws `CannotDo` where it cannot be written. */
  accept({ findings }: CheckResult): void {
    const { workingFolder } = this.#surroundings;
    const asSeenFromIt = (file: string) =>
      slashed(relative(dirname(this.#place), resolve(workingFolder, file)));
    writeOutput(baselineText(findings, this.#lineOf, asSeenFromIt), this.#name, this.#surroundings);
  }

  /** The result without what is accepted. Throws `CannotDo` where the file cannot be read or is broken. */
  applyTo(result: CheckResult): CheckResult {
    const { workingFolder } = this.#surroundings;
    const baseline = this.#read();
    const checked = new Set(result.checked);
    const read = new Set(result.files);
    const { findings, accepted } = applyBaseline(result.findings, baseline, {
      lineOf: this.#lineOf,
      isChecked: (rule, file) =>
        checked.has(rule) && (read.has(file) || !existsSync(resolve(workingFolder, file))),
      unattached: ruleDescriptions.find(({ id }) => id === "note/unattached")?.severity ?? "warning",
    });
    return { ...result, findings, accepted, files: [...result.files, baseline.file] };
  }

  #read(): Baseline {
    const { workingFolder } = this.#surroundings;
    const text = this.#text();
    const asFindingsDo = (file: string) =>
      slashed(relative(workingFolder, resolve(dirname(this.#place), file)));
    const read = readBaseline(slashed(relative(workingFolder, this.#place)), text, asFindingsDo);
    if ("entries" in read) return read;
    const { line, column } = new FileLines(() => text).of(read.span.file).placeOf(read.span.start);
    throw new CannotDo(`${this.#name}:${line}:${column}: ${read.message}`);
  }

  #text(): string {
    try {
      return decodeText(readFileSync(this.#place));
    } catch (error) {
      const hint = errorCode(error) === "ENOENT" ? "; --accept-all writes it" : "";
      throw new CannotDo(`cannot read baseline ${this.#name}: ${reasonOf(errorCode(error))}${hint}`);
    }
  }
}

function slashed(path: string): string {
  return path.replaceAll("\\", "/");
}
