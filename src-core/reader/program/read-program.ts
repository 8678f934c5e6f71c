import type { NotUnderstood } from "../../finding.ts";
import type { Chip } from "../../model/chips/chip.ts";
import { standIns } from "../headers/stand-ins.ts";
import { predefinedMacros, sketchMacros } from "../preprocess/predefined.ts";
import type { SourceHost } from "../source-host.ts";
import type { Grammar } from "../syntax/grammar/grammar.ts";
import { dataModelOf } from "./data-model.ts";
import { link } from "./link.ts";
import type { Program, ProgramUnit, UnitRequest } from "./program.ts";
import type { ProgramCache } from "./program-cache.ts";
import { readUnit } from "./read-unit.ts";

/** A project's code: what is asked for. */
export interface ProgramRequest {
  readonly host: SourceHost;
  readonly units: readonly UnitRequest[];
  /** Undefined while not known. */
  readonly chip: Chip | undefined;
  /** Hz; becomes `F_CPU`. Undefined while not known. */
  readonly clockHz: number | undefined;
  /** Macros of the project: name to body. They go before what the compiler and the chip define. */
  readonly defines: ReadonlyMap<string, string>;
  readonly includePaths: readonly string[];
  readonly grammar: Grammar;
  /** One for each project, handed in again at the next reading. */
  readonly cache: ProgramCache;
}

/** Reads all units of a project and joins them. Never throws; what did not change is not read again. */
export function readProgram(request: ProgramRequest): Program {
  const { chip, clockHz } = request;
  const model = dataModelOf(chip);
  const units = request.units.map((unit) =>
    readUnit(unit, {
      host: request.host,
      defines: { ...outsideMacros(unit, chip, clockHz), ...Object.fromEntries(request.defines) },
      includePaths: request.includePaths,
      standIns: request.cache.standIns(chip, unit.language, standIns),
      model,
      grammar: request.grammar,
      cache: request.cache,
    }),
  );
  return {
    lasting: request.cache.lasting(units),
    units,
    chip,
    clockHz,
    model,
    problems: problemsOf(units),
    ...link(units.map(({ typed }) => typed)),
  };
}

function outsideMacros(
  { language, prelude }: UnitRequest,
  chip: Chip | undefined,
  clockHz: number | undefined,
): Readonly<Record<string, string>> {
  const compiler = predefinedMacros(chip, language, clockHz);
  return prelude.length === 0 ? compiler : { ...compiler, ...sketchMacros(chip) };
}

/** What several units say alike is said once; a header that is nowhere once for the whole project. */
function problemsOf(units: readonly ProgramUnit[]): readonly NotUnderstood[] {
  const distinct = new Map<string, NotUnderstood>();
  const note = (key: string, problem: NotUnderstood): void => {
    if (!distinct.has(key)) distinct.set(key, problem);
  };
  for (const { preprocessed, typed } of units) {
    for (const { name, span } of preprocessed.missing)
      note(`missing ${name}`, { span, message: missing(name) });
    for (const problem of [...preprocessed.problems, ...typed.problems]) {
      const { span, message } = problem;
      note(`${span.file}:${span.start}:${message}`, problem);
    }
  }
  return [...distinct.values()];
}

function missing(name: string): string {
  return `${name} was not found, so what it defines is not known; its folder can be named in includePaths of edgewise.json`;
}
