import type { Machine } from "../../interpreter/machine.ts";
import type { Program } from "../../reader/program/program.ts";
import type { At, FunctionSymbol, TypedUnit, Variable } from "../../reader/typed/nodes.ts";
import { arrayOf, referred } from "../../reader/types/derive.ts";
import { sizeOf } from "../../reader/types/layout.ts";
import type { DataModel, Field, RecordDeclaration, Type } from "../../reader/types/types.ts";
import type { Request } from "../trial-request.ts";
import type { Cell } from "./cell.ts";
import { functionBehind } from "./handed-function.ts";
import { NotTried, stopped } from "./not-tried.ts";
import { ownObject } from "./own-object.ts";

/** What a machine calls a function with; its own parameters begin at index `first`. */
export interface GivenCall {
  readonly given: readonly (number | bigint)[];
  readonly first: number;
}

/** Bytes behind a pointer to something that has no size of its own. */
const behindPointer = 32;

/**
 * Finds the objects that a function works on: its parameters and what they point to, the object it is called on,
 * globals. Objects that nobody else makes are made here.
 */
export class Reach {
  readonly #machine: Machine;
  readonly #symbol: FunctionSymbol;
  readonly #program: Program;
  readonly #unit: TypedUnit;
  readonly #model: DataModel;
  readonly #behind = new Map<number, number>();
  #self: number | undefined;

  constructor(machine: Machine, { program, symbol, unit }: Pick<Request, "program" | "symbol" | "unit">) {
    this.#machine = machine;
    this.#program = program;
    this.#symbol = symbol;
    this.#unit = unit;
    this.#model = unit.model;
  }

  /** What a name of a note means: a parameter, a member of the function's class or a global, and a way inwards. */
  cell([root = "", ...members]: readonly string[]): Cell {
    const { parameterNames, type, memberOf } = this.#symbol;
    const index = parameterNames.indexOf(root);
    const parameter = type.parameters[index];
    if (parameter !== undefined) {
      const isAddress = parameter.kind === "reference" || parameter.kind === "pointer";
      if (members.length === 0 && (!isAddress || functionBehind(parameter) !== undefined))
        return { kind: "argument", index, type: parameter };
      return this.#inwards(this.behind(index), pointedTo(parameter), members, behindPointer);
    }
    if (memberOf !== undefined) {
      const record: Type = { kind: "record", record: memberOf };
      if (root === "this") return this.#inwards(this.self(), record, members);
      if (fieldOf(memberOf, root) !== undefined)
        return this.#inwards(this.self(), record, [root, ...members]);
    }
    const variable = this.global(root);
    const address = variable && this.#machine.addressOf(variable);
    if (variable === undefined || address === undefined)
      throw new NotTried(`\`${root}\` is no object that can be reached`, this.#symbol.at);
    return this.#inwards(address, variable.type, members);
  }

  /** The global that a name means where no parameter or member has it. */
  global(root: string): Variable | undefined {
    const { parameterNames, memberOf } = this.#symbol;
    if (parameterNames.includes(root)) return undefined;
    if (memberOf !== undefined && (root === "this" || fieldOf(memberOf, root) !== undefined))
      return undefined;
    return this.#unit.variables.find(({ name, qualifiedName }) => name === root || qualifiedName === root);
  }

  /** The address of what the parameter points to, or of the object that is passed. */
  behind(index: number): number {
    let address = this.#behind.get(index);
    if (address === undefined) {
      const type = this.#symbol.type.parameters[index];
      address = this.#made(type === undefined ? undefined : pointedTo(type));
      this.#behind.set(index, address);
    }
    return address;
  }

  /** The object that a member function is called on: one of the firmware's own where there is one. */
  self(): number {
    const { memberOf, at } = this.#symbol;
    if (memberOf === undefined) throw new NotTried("it is no member function", at);
    if (this.#self === undefined) {
      this.#self =
        ownObject(this.#program, this.#machine, memberOf) ?? this.#made({ kind: "record", record: memberOf });
    }
    return this.#self;
  }

  /** What the function is called with while no note says anything else: zeros and objects made for it. */
  call(): GivenCall {
    const { memberOf, isStatic, type } = this.#symbol;
    const first: (number | bigint)[] = [];
    if (type.returns.kind === "record") first.push(this.#made(type.returns));
    if (memberOf !== undefined && !isStatic) first.push(this.self());
    const parameters = type.parameters.map((each, index) => {
      if (each.kind === "pointer" || each.kind === "reference" || each.kind === "record")
        return this.behind(index);
      return each.kind === "integer" && each.bits === 64 ? 0n : 0;
    });
    return { given: [...first, ...parameters], first: first.length };
  }

  #made(type: Type | undefined): number {
    const size = type === undefined ? undefined : sizeOf(type, this.#model);
    const isWhole = type?.kind === "record" && size !== undefined;
    const bytes: Type = { kind: "integer", rank: "char", bits: 8, signed: false, name: "unsigned char" };
    const at: At = this.#symbol.at;
    const made = this.#machine.place(isWhole ? type : arrayOf(bytes, Math.max(behindPointer, size ?? 0)), at);
    if (made.kind === "stopped") throw stopped(made.stop, at);
    return Number(made.value);
  }

  #inwards(start: number, outer: Type, members: readonly string[], atLeast = 0): Cell {
    let address = start;
    let type = referred(outer);
    // A byte is free behind every object.
    let room = Math.max(atLeast, this.#size(type) + 1);
    let bits: { readonly from: number; readonly width: number } | undefined;
    for (const name of members) {
      if (type.kind === "pointer" || type.kind === "array") {
        if (type.kind === "pointer") address = this.#pointerAt(address);
        type = type.kind === "pointer" ? type.to : type.of;
      }
      const found = type.kind === "record" ? fieldOf(type.record, name) : undefined;
      if (found === undefined)
        throw new NotTried(`\`${name}\` is no member that can be reached`, this.#symbol.at);
      const { field, bitOffset } = found;
      address += bitOffset >> 3;
      bits = field.bitWidth === undefined ? undefined : { from: bitOffset & 7, width: field.bitWidth };
      if (field.type.kind === "reference") address = this.#pointerAt(address);
      type = referred(field.type);
      room = this.#size(type);
    }
    return { kind: "memory", address, type, room, bits };
  }

  #size(type: Type): number {
    return sizeOf(type, this.#model) ?? 0;
  }

  #pointerAt(address: number): number {
    const { memory } = this.#machine;
    const low = memory.readByte(address) | (memory.readByte(address + 1) << 8);
    if (this.#model.pointer === 16) return low;
    return low + (memory.readByte(address + 2) + memory.readByte(address + 3) * 256) * 65536;
  }
}

function pointedTo(type: Type): Type {
  return type.kind === "pointer" || type.kind === "reference" ? type.to : type;
}

/** A member by name, bases and unnamed members searched too, with its bit offset from the start of the record. */
function fieldOf(
  record: RecordDeclaration,
  name: string,
): { readonly field: Field; readonly bitOffset: number } | undefined {
  for (const field of record.fields) {
    if (field.name === name) return { field, bitOffset: field.bitOffset };
    if (field.name === "" && field.type.kind === "record") {
      const inner = fieldOf(field.type.record, name);
      if (inner !== undefined) return { field: inner.field, bitOffset: field.bitOffset + inner.bitOffset };
    }
  }
  for (const base of record.bases) {
    const inner = fieldOf(base.record, name);
    if (inner !== undefined) return { field: inner.field, bitOffset: 8 * base.offset + inner.bitOffset };
  }
  return undefined;
}
