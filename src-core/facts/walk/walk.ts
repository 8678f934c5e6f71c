import type { Program } from "../../reader/program/program.ts";
import type { FunctionSymbol } from "../../reader/typed/nodes.ts";
import { placedEvents } from "./each-event.ts";
import { allEffects, calledBy, functionEffects } from "./effects.ts";
import { type Entries, findEntries, sharedByInterrupts, writtenAfterStart } from "./entries.ts";
import type { Entry, EntryWalk, Event, OutsideCall, Walk } from "./events.ts";
import { forgetEffects } from "./forget.ts";
import { eachOnce, forgetOrders } from "./in-order.ts";
import { initialize } from "./initializers.ts";
import { walkBody } from "./inlining.ts";
import { linkageOf } from "./linkage.ts";
import { type Hardware, Machine } from "./machine.ts";

/** Steps for the program itself, for each interrupt handler, and for each function that nobody calls. */
const programSteps = 60_000;
const interruptSteps = 6_000;
const aloneSteps = 6_000;
/** Steps for all functions that nobody calls together. */
const allAloneSteps = 30_000;

/**
 * Walks the firmware of a project without running it: from `main`, or from `setup` and `loop`; then each
 * interrupt handler; then each function that nobody calls, with unknown arguments. Never throws.
 */
export function walkFirmware(program: Program, hardware: Hardware): Walk {
  forgetOrders();
  const linkage = linkageOf(program);
  const entries = findEntries(program, linkage);
  const machine = new Machine({
    linkage,
    hardware,
    sharing: sharedByInterrupts(entries, linkage),
    everWritten: writtenAfterStart(entries, linkage),
    steps: programSteps,
  });
  const walks: EntryWalk[] = [];
  constructGlobals(machine, program);
  const start = machine.memory.mark();
  const [first] = entries.program;
  if (first !== undefined) {
    const entry: Entry = { kind: "program", function: first, vector: undefined, attachedBy: undefined };
    walks.push({ entry, events: machine.capture(() => walkProgram(machine, entries.program)) });
  }
  const cutShort = machine.cutShort;
  machine.moment = "any";
  machine.repeats.clear();
  const walkFrom = (entry: Entry, steps: number): void => {
    machine.memory.undoTo(start);
    machine.alive = true;
    machine.steps = steps;
    walks.push({ entry, events: machine.capture(() => enter(machine, entry.function)) });
  };
  for (const symbol of entries.interrupts) {
    const attachedBy = symbol.vector === undefined ? attaching(walks, symbol) : undefined;
    walkFrom({ kind: "interrupt", function: symbol, vector: symbol.vector, attachedBy }, interruptSteps);
  }
  let left = allAloneSteps;
  for (const symbol of neverCalled(machine, entries)) {
    if (machine.reached.has(symbol) || left <= 0) continue;
    const steps = Math.min(left, aloneSteps);
    walkFrom({ kind: "alone", function: symbol, vector: undefined, attachedBy: undefined }, steps);
    left -= steps - machine.steps;
  }
  return { entries: walks, placed: placedEvents(walks), cutShort, linkage };
}

/** Objects of classes at file level are constructed before `main`. */
function constructGlobals(machine: Machine, program: Program): void {
  for (const variable of program.variables) {
    if (variable.initializer?.kind !== "constructor") continue;
    const { initializer } = variable;
    machine.quietly(() => initialize(machine, machine.placeOf(variable), initializer));
    machine.alive = true;
  }
}

/** `main`; or `setup`, and `loop` as the body of an endless loop. */
function walkProgram(machine: Machine, functions: readonly FunctionSymbol[]): void {
  const [only, ...others] = functions;
  if (only === undefined) return;
  if (others.length === 0 && only.name === "main") {
    enter(machine, only);
    return;
  }
  for (const symbol of functions) {
    machine.alive = true;
    if (symbol.name === "loop") turnForEver(machine, symbol);
    else callByCore(machine, symbol);
  }
}

function enter(machine: Machine, symbol: FunctionSymbol): void {
  const definition = machine.linkage.definitionOf(symbol);
  if (definition === undefined) return;
  const object =
    definition.self === undefined
      ? undefined
      : machine.memory.temporary(objectType(definition.self.type), machine.active.length);
  walkBody(machine, symbol, definition, { arguments: [], object });
}

function objectType(type: FunctionSymbol["type"]["returns"]): FunctionSymbol["type"]["returns"] {
  return type.kind === "pointer" ? type.to : type;
}

function callByCore(machine: Machine, symbol: FunctionSymbol): void {
  const definition = machine.linkage.definitionOf(symbol);
  if (definition === undefined) return;
  const events = machine.capture(() => {
    walkBody(machine, symbol, definition, { arguments: [], object: undefined });
  });
  machine.emit({
    kind: "call",
    at: symbol.at,
    function: symbol,
    arguments: [],
    expressions: [],
    object: undefined,
    events,
    result: undefined,
  });
}

function turnForEver(machine: Machine, symbol: FunctionSymbol): void {
  const body = machine.linkage.definitionOf(symbol)?.body;
  if (body === undefined) return;
  forgetEffects(machine, allEffects([functionEffects(symbol, machine.linkage)], machine.linkage));
  const pass = machine.capture(() => callByCore(machine, symbol));
  machine.emit({
    kind: "loop",
    at: symbol.at,
    form: "endless",
    statement: body,
    turns: undefined,
    atMost: undefined,
    waitsFor: [],
    condition: undefined,
    terms: [],
    leaves: false,
    idle: false,
    mayBeSkipped: false,
    passes: [pass],
  });
}

/** The `attachInterrupt` that names a handler. */
function attaching(walks: readonly EntryWalk[], symbol: FunctionSymbol): OutsideCall | undefined {
  for (const { events } of walks) {
    const found = callGiving(events, symbol);
    if (found !== undefined) return found;
  }
  return undefined;
}

function callGiving(events: readonly Event[], symbol: FunctionSymbol): OutsideCall | undefined {
  for (const event of eachOnce(events)) {
    if (event.kind !== "outside-call") continue;
    if (event.arguments.some((value) => value.kind === "function" && value.function === symbol)) return event;
  }
  return undefined;
}

/** Functions in the order in which they are walked on their own: first those that no other function calls. */
function neverCalled(machine: Machine, entries: Entries): FunctionSymbol[] {
  const called = new Set<FunctionSymbol>();
  for (const symbol of entries.all) {
    for (const callee of calledBy(functionEffects(symbol, machine.linkage), machine.linkage)) {
      const defining = machine.linkage.definingSymbol(callee);
      if (defining !== symbol) called.add(defining);
    }
  }
  const roots = entries.all.filter((symbol) => !called.has(symbol));
  return [...roots, ...entries.all.filter((symbol) => called.has(symbol))];
}
