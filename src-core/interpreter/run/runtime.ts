import type { Chip } from "../../model/chips/chip.ts";
import type { Program } from "../../reader/program/program.ts";
import { isStandIn } from "../../reader/tokens.ts";
import type { At, ClassMembers, FunctionSymbol, Variable } from "../../reader/typed/nodes.ts";
import { alignmentOf, sizeOf } from "../../reader/types/layout.ts";
import type { RecordDeclaration, Type } from "../../reader/types/types.ts";
import { lowerEnd, lowerGlobal, lowerObject } from "../lower/functions.ts";
import type { MachineRequest } from "../machine.ts";
import type { Outcome, OutsideFunction, Surroundings, TargetMemory, Written } from "../outcome.ts";
import { type Access, accessTo } from "./access.ts";
import { arithmeticOf } from "./arithmetic.ts";
import { Changes } from "./changes.ts";
import { Classes } from "./classes.ts";
import { type BodySources, type Code, FunctionBodies, missing, type Value } from "./function-bodies.ts";
import { Halt } from "./halt.ts";
import { type Instructions, instructionsOf } from "./instructions.ts";
import { Linker } from "./linker.ts";
import { byteState, Memory, type SavedMemory } from "./memory.ts";
import { Missteps } from "./missteps.ts";
import { Pace } from "./pace.ts";
import { Turns } from "./turns.ts";
import { wordsOf } from "./words.ts";

interface Ending {
  readonly address: number;
  readonly end: (address: number) => void;
}

/** What the generated code works on: memory, the table of functions, counters. */
export class Runtime {
  readonly missteps: Missteps;
  readonly linker: Linker;
  readonly targetMemory: TargetMemory;
  readonly #request: MachineRequest;
  readonly pace: Pace;
  readonly #memory: Memory;
  /** Both undefined where no time goes by: nothing waits then. */
  readonly #changes: Changes | undefined;
  readonly #turns: Turns | undefined;
  readonly #classes: Classes;
  /** By number: what a function does. Those not called yet lower themselves first. */
  readonly #table: Code[] = [];
  /** Those, by number. */
  readonly #toLower = new Map<number, FunctionSymbol>();
  /** Functions that are declared only, by number. */
  readonly #undefined = new Map<number, FunctionSymbol>();
  readonly #guards: number[] = [];
  /** Steps left of the slice; depth of calls; the place of the last call of a library function. */
  readonly #counters = new Int32Array(3);
  readonly #kept: Map<string, number>;
  /** Temporary objects that are to end, the last made last, each with what ends it. */
  readonly #temporaries: Ending[] = [];
  readonly #endings = new Map<RecordDeclaration, Code>();
  readonly #bodies: FunctionBodies;
  readonly #compile: (code: string) => Code;
  readonly #instruct: Instructions;
  readonly #saved: SavedMemory[] = [];
  /** The objects of the program's declarations. */
  readonly #listed: ReadonlySet<Variable>;
  readonly #initialized = new Set<Variable>();
  /** Objects that have a place by now. */
  readonly #placed: Variable[] = [];
  #isRunning = false;

  constructor(request: MachineRequest, outside: readonly (OutsideFunction | undefined)[]) {
    this.#request = request;
    const { program, registers } = request;
    this.#memory = new Memory(program.model);
    this.#classes = new Classes(classesOf(program.units.map(({ typed }) => typed.classes)));
    const { clock } = request;
    this.#changes = clock && new Changes(this.#memory.bytes);
    this.#kept = new NotedMap(this.#changes);
    this.linker = new Linker(program, this.#memory, this.#classes, request.instead, clock);
    this.missteps = new Missteps(this.linker.places);
    if (program.model.name === "avr") this.#memory.markRegisters(0x20, registersEnd(program.chip));
    this.pace = new Pace(request, this.linker, this.#counters);
    this.#turns = clock && this.#changes && new Turns(clock, this.#changes, this.pace);
    const settled = registers && this.pace.settled(registers);
    const access = accessTo(
      this.#memory,
      this.missteps,
      settled,
      this.linker.places,
      this.pace,
      this.#changes,
    );
    const instruct = instructionsOf(program.chip, access);
    this.#instruct = (word, place) => {
      instruct(word, place);
      if (word === "wdr" || word === "sleep") this.pace.instructed(word, place);
    };
    this.#compile = compilerOf({ ...access, ...arithmeticOf(this.missteps), ...this.#services() });
    this.targetMemory = this.#targetMemory(access);
    this.#bodies = new FunctionBodies({
      linker: this.linker,
      instead: request.instead,
      outside: outside.filter((each) => each !== undefined),
      watch: this.#callWatch(),
      compile: this.#compile,
      instruct: this.#instruct,
      memory: this.targetMemory,
      surroundings: this.#makeSurroundings(),
    });
    this.linker.onNumbered = (number, symbol) => {
      if (this.#bodies.of(symbol) === undefined) this.#undefined.set(number, symbol);
      this.#table[number] = this.#unlowered(number, symbol);
    };
    this.linker.originOf = (symbol) => this.#bodies.of(symbol)?.origin;
    const shared = new Set(request.shared?.map((variable) => program.definingVariable(variable)));
    this.#listed = new Set(declaredIn(program).map((variable) => program.definingVariable(variable)));
    // One may be initialised by another that was placed behind it: a template's parameter by that of the template around.
    this.linker.onUsed = (variable) => {
      if (this.#isRunning && !this.#listed.has(variable)) this.#initialize(variable);
    };
    this.linker.onPlaced = (variable) => {
      this.#placed.push(variable);
      if (shared.has(variable)) this.#share(variable);
      if (this.#isRunning) this.#initialize(variable);
      this.#keepToo(variable);
    };
  }

  prepare(): void {
    for (const symbol of this.#request.program.functions) {
      // A lambda's function is lowered behind the function around it.
      if (symbol.definition !== undefined && symbol.name !== "operator()") this.linker.functionNumber(symbol);
    }
    // Lowering one asks for others, which come behind it.
    for (const [number, symbol] of this.#toLower) {
      try {
        this.#lower(number, symbol);
      } catch {
        // It stays as it is, and what keeps it from being lowered is told when it is called.
      }
    }
  }

  reset(): Outcome {
    this.pace.reset();
    this.#temporaries.length = 0;
    this.#counters[1] = 0;
    return this.#guarded(() => {
      this.#memory.clear();
      this.linker.writeLiterals();
      this.#guards.length = 0;
      this.#kept.clear();
      this.#initialized.clear();
      // Members that are defined within their class have their values before anything else runs (C++11 3.6.2p2, 9.4.2p3).
      for (const variable of this.#placed) if (!this.#listed.has(variable)) this.#initialize(variable);
      for (const variable of declaredIn(this.#request.program)) {
        const isAuthors = !isStandIn(variable.at.first.file);
        if (isAuthors || this.linker.placedAt(variable) !== undefined) this.#initialize(variable);
      }
      return undefined;
    });
  }

  call(symbol: FunctionSymbol, parameters: readonly (number | bigint)[]): Outcome {
    return this.#guarded(() => this.#function(this.linker.functionNumber(symbol))(...parameters));
  }

  pointerTo(symbol: FunctionSymbol): number {
    return this.linker.functionPointer(symbol);
  }

  callPointer(pointer: number, parameters: readonly (number | bigint)[]): Outcome {
    return this.#guarded(() => this.#pointed(pointer, 0)(...parameters));
  }

  turns(): () => void {
    const turns = this.#turns;
    if (turns === undefined) return () => undefined;
    let moment = -1;
    let cycles = 0;
    return () => {
      turns.begins(moment, cycles);
      [moment = -1, cycles = 0] = turns.begun;
    };
  }

  wait(cycles: number): Outcome {
    return this.#guarded(() => {
      this.pace.wait(cycles, 0);
      return undefined;
    });
  }

  place(type: Type, at: At): Outcome {
    return this.#guarded(() => {
      const size = sizeOf(type, this.linker.model);
      if (size === undefined) throw new Halt("cannot-run", "cannot run: an object of unknown size", at);
      const address = this.#memory.placeStatic(size, alignmentOf(type, this.linker.model));
      this.#compile(lowerObject(this.linker, type, address, at))();
      return address;
    });
  }

  keep(): () => void {
    const memory = this.#memory.save();
    this.#saved.push(memory);
    const guards = [...this.#guards];
    const kept = [...this.#kept];
    return () => {
      this.#memory.restore(memory);
      this.#guards.splice(0, this.#guards.length, ...guards);
      this.#kept.clear();
      for (const [name, value] of kept) this.#kept.set(name, value);
    };
  }

  /** An object that is placed when it is first used belongs to what was kept before, too. */
  #keepToo(variable: Variable): void {
    const address = this.linker.placedAt(variable);
    const size = sizeOf(variable.type, this.linker.model);
    if (address === undefined || size === undefined) return;
    for (const saved of this.#saved)
      saved.later.push({ address, bytes: this.#memory.bytes.slice(address, address + size) });
  }

  #share(variable: Variable): void {
    const address = this.linker.placedAt(variable) ?? 0;
    for (const { offset, bytes } of wordsOf(variable.type, this.linker.model))
      this.#memory.share(address + offset, bytes);
  }

  watch(address: number, bytes: number): void {
    this.#memory.watch(address, bytes);
  }

  takeWritten(): readonly Written[] {
    const { places } = this.linker;
    return this.#memory.written
      .splice(0)
      .map(({ address, value, place }) => ({ address, value, at: places[place] }));
  }

  writerOf(address: number): At | undefined {
    return this.linker.places[this.#memory.writers[address] ?? 0];
  }

  #guarded(run: () => Value): Outcome {
    const wasRunning = this.#isRunning;
    const depth = this.#counters[1] ?? 0;
    const { stackPointer } = this.#memory;
    const temporaries = this.#temporaries.length;
    if (!wasRunning) this.pace.begin();
    this.#isRunning = true;
    try {
      return { kind: "returned", value: run() };
    } catch (problem) {
      this.#counters[1] = depth;
      this.#memory.stackPointer = stackPointer;
      this.#temporaries.length = temporaries;
      if (problem instanceof Halt) return { kind: "stopped", stop: problem.stop };
      if (problem instanceof RangeError) {
        return {
          kind: "stopped",
          stop: { reason: "recursion", message: "calls within calls without end", at: undefined },
        };
      }
      throw problem;
    } finally {
      this.#isRunning = wasRunning;
    }
  }

  #initialize(declared: Variable): void {
    const variable = this.#request.program.definingVariable(declared);
    if (this.#initialized.has(variable)) return;
    this.#initialized.add(variable);
    if (variable.storage !== "global" && variable.storage !== "file") return;
    this.#compile(lowerGlobal(this.linker, variable))();
  }

  #function(number: number): Code {
    const code = this.#table[number];
    if (code === undefined)
      throw new Halt("cannot-run", "cannot run: a call of what is no function", undefined);
    return code;
  }

  #pointed(pointer: number, place: number): Code {
    const at = this.linker.places[place];
    if (pointer === 0) {
      this.missteps.note("null-pointer", "calls through a null pointer", place);
      throw new Halt("cannot-run", "cannot run: a call through a null pointer", at);
    }
    if (pointer > this.#table.length)
      throw new Halt("cannot-run", "cannot run: a call through a pointer to no function", at);
    const symbol = this.#undefined.get(pointer - 1);
    if (symbol !== undefined) throw missing(symbol, at);
    return this.#function(pointer - 1);
  }

  /** Stands for a function until it is called for the first time; then that is lowered and takes its place. */
  #unlowered(number: number, symbol: FunctionSymbol): Code {
    this.#toLower.set(number, symbol);
    return (...parameters) => this.#lower(number, symbol)(...parameters);
  }

  #lower(number: number, symbol: FunctionSymbol): Code {
    const code = this.#bodies.codeOf(symbol);
    this.#table[number] = code;
    this.#toLower.delete(number);
    return code;
  }

  /** Wraps code so that whoever watches calls is told of it. */
  #callWatch(): BodySources["watch"] {
    const calls = this.#request.clock?.calls;
    if (calls === undefined) return undefined;
    return (symbol, code) =>
      (...parameters) => {
        // A turn in which something is told of is no turn that may be skipped.
        this.#changes?.noteOther();
        calls.entered(symbol, this.pace.untold);
        try {
          return code(...parameters);
        } finally {
          calls.left(this.pace.untold);
        }
      };
  }

  /** A library function cannot do what it is called for. */
  #refusal(what: string): Halt {
    return new Halt("cannot-run", `cannot run: ${what}`, this.linker.places[this.#counters[2] ?? 0]);
  }

  /** What generated code calls beside loads, stores and operators. */
  #services() {
    const { linker } = this;
    const memory = this.#memory;
    const C = this.#counters;
    const { depth: deepest } = this.#request.limits;
    // Where cycles are counted, functions say themselves what a call of them takes.
    const step = this.#request.clock === undefined ? 1 : 0;
    const table = this.#table;
    const temporaries = this.#temporaries;
    const noObject = (place: number): Halt =>
      new Halt("cannot-run", "cannot run: a virtual call on what is no object", linker.places[place]);
    const chosen = (method: number, address: number, place: number) => {
      const found = this.#classes.chosen(method, this.#markAt(address));
      if (found === undefined) throw noObject(place);
      return found;
    };
    return {
      C,
      G: this.#guards,
      F: table,
      Z: temporaries,
      temporary: (address: number, end: (address: number) => void): number => {
        temporaries.push({ address, end });
        return address;
      },
      ended: (count: number, value: Value): Value => {
        while (temporaries.length > count) {
          const last = temporaries.pop();
          last?.end(last.address);
        }
        return value;
      },
      /** Ends the whole object that something is a part of; where the whole begins comes back. */
      destroyed: (address: number, place: number): number => {
        const mark = this.#classes.marked(this.#markAt(address));
        if (mark === undefined) throw noObject(place);
        const whole = address - mark.offset;
        this.#endingOf(mark.record, place)(whole);
        return whole;
      },
      fround: Math.fround,
      imul: Math.imul,
      whole: (value: number): number => (Number.isFinite(value) ? Math.trunc(value) : 0),
      enter: (bytes: number, place: number): number => {
        const depth = (C[1] ?? 0) + 1;
        C[1] = depth;
        if (depth > deepest)
          throw new Halt("recursion", `more than ${deepest} calls within calls`, linker.places[place]);
        const left = (C[0] ?? 0) - step;
        C[0] = left;
        if (left < 0) this.pace.spent(place);
        return bytes === 0 ? memory.stackPointer : memory.enter(bytes);
      },
      leave: (bytes: number): void => {
        C[1] = (C[1] ?? 0) - 1;
        if (bytes !== 0) memory.leave(bytes);
      },
      spent: (place: number): void => this.pace.spent(place),
      /** A shift goes round once for each bit; the next statement sees whether cycles are left. */
      shifting: (count: number, turn: number): number => {
        C[0] = (C[0] ?? 0) - Math.min(count & 0xff, 64) * turn;
        return count;
      },
      waited: (cycles: number): void => this.pace.wait(cycles, 0),
      T: this.#turns?.begun,
      turned: (moment: number, cycles: number) => this.#turns?.begins(moment, cycles),
      counted: (...turn: Parameters<Turns["beginsCounted"]>) => this.#turns?.beginsCounted(...turn),
      /** Something is done once and never again. */
      changed: (): void => this.#changes?.noteOther(),
      cannot: (text: number, place: number): never => {
        throw new Halt("cannot-run", `cannot run: ${linker.texts[text]}`, linker.places[place]);
      },
      instruction: (text: number, place: number): void => this.#instruct(linker.texts[text] ?? "", place),
      taken: (bytes: number): number => this.#allocate(bytes),
      released: (address: number): void => this.#release(address),
      blockBytes: (address: number): number => memory.allocatedAt(address),
      repeat: (count: number, each: (index: number) => void): void => {
        for (let index = 0; index < count; index += 1) each(index);
      },
      pointed: (pointer: number, place: number): Code => this.#pointed(pointer, place),
      virtual: (method: number, address: number, place: number): Code => {
        const { symbol } = chosen(method, address, place);
        const origin = linker.origin(symbol);
        if (origin === undefined) throw missing(symbol, linker.places[place]);
        if (origin === "outside") C[2] = place;
        return this.#function(linker.functionNumber(symbol));
      },
      adjusted: (method: number, address: number): number => address + chosen(method, address, 0).step,
    };
  }

  /** What ends an object of just this class. */
  #endingOf(record: RecordDeclaration, place: number): Code {
    let code = this.#endings.get(record);
    if (code === undefined) {
      const at = this.linker.places[place];
      if (at === undefined) throw new Error("an object ends at no place");
      code = this.#compile(lowerEnd(this.linker, record, at));
      this.#endings.set(record, code);
    }
    return code;
  }

  /** Which class the object at an address says that it is of. */
  #markAt(address: number): number {
    const { bytes } = this.#memory;
    return this.linker.model.pointer === 16
      ? (bytes[address] ?? 0) | ((bytes[address + 1] ?? 0) << 8)
      : new DataView(bytes.buffer).getUint32(address, true);
  }

  #allocate(bytes: number): number {
    this.#changes?.noteOther();
    return this.#memory.allocate(bytes);
  }

  #release(address: number): void {
    this.#changes?.noteOther();
    this.#memory.release(address);
  }

  #targetMemory(access: Access): TargetMemory {
    const memory = this.#memory;
    return {
      readByte: (address) => access.l1(address, 0),
      writeByte: (address, value) => {
        // What is written to a register has a place: that of the call.
        const isRegister = memory.states[address] === byteState.register;
        access.s1(address, value, isRegister ? (this.#counters[2] ?? 0) : 0);
      },
      allocate: (bytes) => this.#allocate(bytes),
      release: (address) => this.#release(address),
      allocatedAt: (address) => memory.allocatedAt(address),
    };
  }

  #makeSurroundings(): Surroundings {
    const { linker } = this;
    const { program } = this.#request;
    return {
      callVirtual: (self, name, parameters) => {
        const found = this.#classes.named(name, parameters.length, this.#markAt(self));
        if (found === undefined) throw this.#refusal(`\`${name}\` of an object without it`);
        return this.#function(linker.functionNumber(found.symbol))(self + found.step, ...parameters);
      },
      callPointer: (pointer, parameters) => this.#function(pointer - 1)(...parameters),
      addressOf: (name) => {
        for (const { typed } of program.units) {
          const variable = typed.variables.find(({ qualifiedName }) => qualifiedName === name);
          if (variable !== undefined) return linker.globalAddress(variable);
        }
        return undefined;
      },
      wait: (cycles) => this.pace.wait(cycles, this.#counters[2] ?? 0),
      instruct: (word) => this.#instruct(word, this.#counters[2] ?? 0),
      chip: program.chip,
      settle: () => this.pace.settle(0),
      place: () => linker.places[this.#counters[2] ?? 0],
      changed: () => this.#changes?.noteOther(),
      clockHz: program.clockHz,
      refuse: (what) => {
        throw this.#refusal(what);
      },
      model: linker.model,
      kept: this.#kept,
    };
  }
}

/** A map that tells of every write. */
class NotedMap extends Map<string, number> {
  readonly #changes: Changes | undefined;

  constructor(changes: Changes | undefined) {
    super();
    this.#changes = changes;
  }

  override set(name: string, value: number): this {
    this.#changes?.noteOther();
    return super.set(name, value);
  }
}

function classesOf(
  units: readonly ReadonlyMap<RecordDeclaration, ClassMembers>[],
): ReadonlyMap<RecordDeclaration, ClassMembers> {
  return new Map(units.flatMap((classes) => [...classes]));
}

/** Memory begins where the registers end; without a chip, where those of the smaller AVRs do. */
function registersEnd(chip: Chip | undefined): number {
  return chip?.kind === "avr" ? chip.memory.ramStart : 0x100;
}

/**
 * Makes functions of generated code. That code holds nothing of the source but numbers: names are made here, texts
 * and places are looked up by number, so that no source can bring in code of its own.
 */
function compilerOf(services: Readonly<Record<string, unknown>>): (code: string) => Code {
  const names = Object.keys(services);
  const values = Object.values(services);
  return (code) => new Function(...names, `"use strict";return ${code}`)(...values);
}

function declaredIn(program: Program): readonly Variable[] {
  return program.units.flatMap(({ typed }) => typed.variables);
}
