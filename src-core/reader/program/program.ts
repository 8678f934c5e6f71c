import type { NotUnderstood } from "../../finding.ts";
import type { Chip } from "../../model/chips/chip.ts";
import type { Preprocessed } from "../tokens.ts";
import type { FunctionSymbol, TypedUnit, Variable } from "../typed/nodes.ts";
import type { DataModel } from "../types/types.ts";

/** One translation unit of a project: what is asked for. */
export interface UnitRequest {
  /** Files read one after the other: one, or all `.ino` files of a sketch. */
  readonly mains: readonly string[];
  readonly language: "c" | "c++";
  /** Headers included before the first main file. */
  readonly prelude: readonly string[];
}

/** One translation unit as read. */
export interface ProgramUnit extends UnitRequest {
  readonly preprocessed: Preprocessed;
  readonly typed: TypedUnit;
}

/** All units of a project, and what their declarations have to do with each other. */
export interface Program {
  /** The same object as long as nothing but bodies of functions changes, in any unit. */
  readonly lasting: object;
  readonly units: readonly ProgramUnit[];
  /** Undefined while not known: then no register has a name, and types are those of AVR. */
  readonly chip: Chip | undefined;
  /** Hz. */
  readonly clockHz: number | undefined;
  readonly model: DataModel;
  /** The author's functions, each once: the one with the body, or the first that only declares. */
  readonly functions: readonly FunctionSymbol[];
  /** The author's variables at file, namespace and class level, each once. */
  readonly variables: readonly Variable[];
  /** What was not understood in any unit; each place and message once. */
  readonly problems: readonly NotUnderstood[];
  /** The function with the body that this declaration means, in whichever unit; undefined for none. */
  definitionOf(symbol: FunctionSymbol): FunctionSymbol | undefined;
  /** The one variable that stands for all declarations of it: the one with the initialiser, if any. */
  definingVariable(variable: Variable): Variable;
}
