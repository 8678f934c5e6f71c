import type { At, FunctionSymbol } from "../../reader/typed/nodes.ts";
import { lowerFunction } from "../lower/functions.ts";
import { instructionNamed } from "../lower/instruction-names.ts";
import type { Origin } from "../lower/scope.ts";
import type {
  InsteadBody,
  InsteadFunction,
  OutsideBody,
  OutsideFunction,
  Surroundings,
  TargetMemory,
} from "../outcome.ts";
import { Halt } from "./halt.ts";
import type { Instructions } from "./instructions.ts";
import type { Linker } from "./linker.ts";

export type Value = number | bigint | undefined;
export type Code = (...parameters: readonly (number | bigint)[]) => Value;

/** Where the code of a function is, and the way to it. */
export interface Body {
  readonly origin: Origin;
  make(): Code;
}

/** Where bodies may come from, and what they work on. */
export interface BodySources {
  readonly linker: Linker;
  readonly instead: InsteadFunction | undefined;
  /** The first that knows a function has it. */
  readonly outside: readonly OutsideFunction[];
  /** Told of calls of the program's own functions; undefined where nobody wants to know. */
  readonly watch: ((symbol: FunctionSymbol, code: Code) => Code) | undefined;
  /** Makes a function of generated code. */
  readonly compile: (code: string) => Code;
  readonly instruct: Instructions;
  readonly memory: TargetMemory;
  readonly surroundings: Surroundings;
}

/**
 * Finds the code of functions: what is run in place of one, or else its own body, a library's, or an instruction that a
 * header calls by a name.
 */
export class FunctionBodies {
  readonly #sources: BodySources;

  constructor(sources: BodySources) {
    this.#sources = sources;
  }

  /** Code that throws `Halt` when it is called, for a function that is declared only. */
  codeOf(symbol: FunctionSymbol): Code {
    const code = this.of(symbol)?.make();
    if (code !== undefined) return code;
    return () => {
      throw missing(symbol, symbol.at);
    };
  }

  /** The way to the code of a function; undefined where it is declared only. */
  of(symbol: FunctionSymbol): Body | undefined {
    const { linker, compile, outside: libraries } = this.#sources;
    const instead = this.#sources.instead?.(symbol);
    if (instead !== undefined) return { origin: "program", make: () => this.#insteadCode(symbol, instead) };
    const { definition } = symbol;
    const lambda = linker.lambdas.get(symbol);
    const lowered: Body | undefined = definition && {
      origin: "program",
      make: () => this.#watched(symbol, compile(lowerFunction(linker, symbol, definition, lambda))),
    };
    if (lowered !== undefined && !symbol.standIn) return lowered;
    for (const library of libraries) {
      const body = library(symbol);
      if (body !== undefined) return { origin: "outside", make: () => this.#outsideCode(body) };
    }
    return lowered ?? this.#instructionOf(symbol);
  }

  #watched(symbol: FunctionSymbol, code: Code): Code {
    return symbol.standIn ? code : (this.#sources.watch?.(symbol, code) ?? code);
  }

  #instructionOf(symbol: FunctionSymbol): Body | undefined {
    const word = symbol.standIn ? instructionNamed(symbol.name) : undefined;
    if (word === undefined) return undefined;
    const { linker, instruct } = this.#sources;
    const place = linker.placeNumber(symbol.at);
    const run = (): undefined => {
      instruct(word, place);
    };
    return { origin: "program", make: () => run };
  }

  #outsideCode(body: OutsideBody): Code {
    const { memory, surroundings } = this.#sources;
    return (...parameters) => body(parameters, memory, surroundings);
  }

  /** Calls of it in the source bring two more values: see `Linkage.isReplaced`. */
  #insteadCode(symbol: FunctionSymbol, body: InsteadBody): Code {
    const { linker, memory } = this.#sources;
    const own = symbol.type.parameters.length + (symbol.memberOf !== undefined && !symbol.isStatic ? 1 : 0);
    return (...parameters) =>
      body(parameters.slice(0, own), memory, {
        argument: linker.places[Number(parameters[own] ?? 0)],
        readsFrom: Number(parameters[own + 1] ?? 0),
      });
  }
}

/** Why a function that is declared only cannot be called. */
export function missing({ qualifiedName }: FunctionSymbol, at: At | undefined): Halt {
  return new Halt("cannot-run", `cannot run: \`${qualifiedName}\`, which is declared and not defined`, at);
}
