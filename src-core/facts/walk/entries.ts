import type { Program } from "../../reader/program/program.ts";
import type { FunctionSymbol, TypedExpression, Variable } from "../../reader/typed/nodes.ts";
import type { Field } from "../../reader/types/types.ts";
import { allEffects, type DirectEffects, functionEffects, outlivesCalls, reachedFrom } from "./effects.ts";
import type { Linkage } from "./linkage.ts";
import type { Sharing } from "./memory.ts";
import type { Trace } from "./values.ts";
import { visitStatement } from "./visit.ts";

/** Where execution starts, by the text alone. */
export interface Entries {
  /** `main`, or `setup` and `loop`; empty for a library. */
  readonly program: readonly FunctionSymbol[];
  /** Interrupt handlers: those of vectors, and functions given to functions that are not in the project. */
  readonly interrupts: readonly FunctionSymbol[];
  /** All functions with a body in the project, each once. */
  readonly all: readonly FunctionSymbol[];
}

export function findEntries(program: Program, linkage: Linkage): Entries {
  const all = definedFunctions(program, linkage);
  const names = new Set(all.map(({ name }) => name));
  const byName = (name: string): FunctionSymbol | undefined =>
    all.find(
      (symbol) => symbol.name === name && symbol.memberOf === undefined && symbol.vector === undefined,
    );
  const main = byName("main");
  const starts = main === undefined ? [byName("setup"), byName("loop")] : [main];
  const interrupts = new Set(all.filter(({ vector }) => vector !== undefined));
  for (const symbol of all) {
    for (const [callback, callee] of functionEffects(symbol, linkage).callbacks) {
      if (!names.has(callee)) interrupts.add(linkage.definingSymbol(callback));
    }
  }
  return { program: starts.filter((symbol) => symbol !== undefined), interrupts: [...interrupts], all };
}

/** Inline functions of headers may stand in several units; one of them is enough. */
function definedFunctions(program: Program, linkage: Linkage): FunctionSymbol[] {
  const found: FunctionSymbol[] = [];
  const places = new Set<string>();
  for (const symbol of program.functions) {
    if (linkage.definitionOf(symbol) === undefined) continue;
    const { file, start } = symbol.at.first;
    const place = `${file}:${start}`;
    if (places.has(place)) continue;
    places.add(place);
    found.push(symbol);
  }
  return found;
}

/** What interrupt handlers write: never known to other code, except that a counter of time tells the time. */
export function sharedByInterrupts(entries: Entries, linkage: Linkage): Sharing {
  const reached = reachedFrom(entries.interrupts, linkage);
  const parts = [...reached].map((symbol) => functionEffects(symbol, linkage));
  const { variables, fields } = allEffects(parts, linkage);
  const clocks = timeCounters(entries, linkage);
  return {
    variable(variable) {
      if (!variables.has(variable) || !outlivesCalls(variable)) return undefined;
      return clocks.get(variable) ?? { kind: "shared", variable, field: undefined };
    },
    field: (field) => (fields.has(field) ? { kind: "shared", variable: undefined, field } : undefined),
  };
}

const timerVectors = /TIM|TCB|RTC|WDT/;

/** Variables that a timer's handler only counts up. */
function timeCounters(entries: Entries, linkage: Linkage): ReadonlyMap<Variable, Trace> {
  const counters = new Map<Variable, Trace>();
  const others = new Set<Variable>();
  for (const entry of entries.interrupts) {
    const isTimer = entry.vector !== undefined && timerVectors.test(entry.vector);
    for (const symbol of reachedFrom([entry], linkage)) {
      const body = linkage.definitionOf(symbol)?.body;
      if (body === undefined) continue;
      visitStatement(body, (expression) => {
        const variable = writtenVariable(expression);
        if (variable === undefined) return;
        const counted = linkage.canonical(variable);
        if (isTimer && countsUp(expression)) counters.set(counted, timeTrace(counted));
        else others.add(counted);
      });
    }
  }
  for (const variable of others) counters.delete(variable);
  return counters;
}

function writtenVariable(expression: TypedExpression): Variable | undefined {
  const target =
    expression.kind === "update"
      ? expression.operand
      : expression.kind === "assign" || expression.kind === "compound-assign"
        ? expression.target
        : undefined;
  return target?.kind === "variable" ? target.variable : undefined;
}

function countsUp(expression: TypedExpression): boolean {
  if (expression.kind === "update") return expression.operator === "++";
  if (expression.kind === "compound-assign") return expression.operator === "+";
  return (
    expression.kind === "assign" &&
    expression.value.kind === "arithmetic" &&
    expression.value.operator === "+"
  );
}

/** The unit is in the name, or else not known. */
function timeTrace(variable: Variable): Trace {
  const { name } = variable;
  if (/milli|(^|_)ms(_|$)|Ms$|msec/i.test(name)) return { kind: "time", unit: "ms", name };
  if (/micro|(^|_)us(_|$)|Us$|usec/i.test(name)) return { kind: "time", unit: "us", name };
  return { kind: "time", unit: "tick", name };
}

/** What is written by anything but constructors, whose values are those that a run begins with. */
export function writtenAfterStart(entries: Entries, linkage: Linkage): Sharing {
  const variables = new Set<Variable>();
  const fields = new Set<Field>();
  for (const symbol of entries.all) {
    if (symbol.special === "constructor") continue;
    const effects: DirectEffects = functionEffects(symbol, linkage);
    for (const variable of effects.variables) variables.add(linkage.canonical(variable));
    for (const field of effects.fields) fields.add(linkage.canonicalField(field));
  }
  return {
    variable: (variable) =>
      variables.has(variable) ? { kind: "shared", variable, field: undefined } : undefined,
    field: (field) => (fields.has(field) ? { kind: "shared", variable: undefined, field } : undefined),
  };
}
