import type { FunctionDefinition, FunctionSymbol, TypedInitializer } from "../../reader/typed/nodes.ts";
import type { RecordDeclaration } from "../../reader/types/types.ts";
import { copyObject } from "./assignments.ts";
import { referenceTo } from "./calls.ts";
import { evaluate } from "./expressions.ts";
import { callFunction } from "./inlining.ts";
import { store } from "./load-store.ts";
import type { Machine } from "./machine.ts";
import type { Place } from "./places.ts";
import { integer } from "./unknowns.ts";

/** Entries of an initialiser beyond this are not written one by one. */
const mostElements = 256;

/** Gives a new object its first value. */
export function initialize(machine: Machine, place: Place, initializer: TypedInitializer): void {
  switch (initializer.kind) {
    case "value":
      initializeFrom(machine, place, initializer);
      return;
    case "aggregate":
      initializeParts(machine, place, initializer);
      return;
    case "constructor":
      initializeByConstructor(machine, place, initializer);
      return;
  }
}

function initializeFrom(
  machine: Machine,
  place: Place,
  { value, at }: Extract<TypedInitializer, { kind: "value" }>,
): void {
  if (place.type?.kind === "reference") {
    machine.memory.write(place, referenceTo(machine, value));
  } else if (place.type?.kind === "record" || place.type?.kind === "array") {
    copyObject(machine, evaluate(machine, value), place);
  } else {
    store(machine, place, evaluate(machine, value), at);
  }
}

function initializeParts(
  machine: Machine,
  place: Place,
  { entries }: Extract<TypedInitializer, { kind: "aggregate" }>,
): void {
  const { memory } = machine;
  memory.overwrite(place, integer(0, undefined));
  for (const { target, initializer } of entries) {
    if ("index" in target) {
      const upTo = Math.min(target.upTo, target.index + mostElements);
      for (let index = target.index; index <= upTo; index += 1) {
        initialize(machine, memory.element(place, index), initializer);
      }
    } else {
      initialize(machine, memory.member(place, target), initializer);
    }
  }
}

function initializeByConstructor(
  machine: Machine,
  place: Place,
  initializer: Extract<TypedInitializer, { kind: "constructor" }>,
): void {
  const symbol = initializer.constructor;
  const [only] = initializer.arguments;
  if (symbol === undefined) {
    if (only !== undefined) copyObject(machine, evaluate(machine, only), place);
    else if (place.type?.kind === "record") initializeFields(machine, place.type.record, place, new Set());
    return;
  }
  const parameters = symbol.type.parameters;
  callFunction(
    machine,
    symbol,
    {
      at: initializer.at,
      type: symbol.type.returns,
      expressions: initializer.arguments,
      arguments: initializer.arguments.map((argument, index) =>
        parameters[index]?.kind === "reference"
          ? referenceTo(machine, argument)
          : evaluate(machine, argument),
      ),
      object: place,
    },
    symbol.name,
  );
}

/** What a constructor does before its body: `: pin(p), rate(40)`, and the first values given in the class. */
export function constructMembers(
  machine: Machine,
  symbol: FunctionSymbol,
  definition: FunctionDefinition,
  object: Place | undefined,
): void {
  if (object === undefined) return;
  const named = new Set<unknown>(definition.memberInitializers.map(({ target }) => target));
  const delegates = symbol.memberOf !== undefined && named.has(symbol.memberOf);
  if (symbol.memberOf !== undefined && !delegates) initializeFields(machine, symbol.memberOf, object, named);
  for (const { target, initializer } of definition.memberInitializers) {
    if (target === undefined) continue;
    if ("bitOffset" in target) initialize(machine, machine.memory.member(object, target), initializer);
    else initialize(machine, object, initializer);
  }
}

/** `int x = 5;` in a class, for the members that nothing else gives a value. */
function initializeFields(
  machine: Machine,
  record: RecordDeclaration,
  object: Place,
  named: ReadonlySet<unknown>,
): void {
  const members = machine.linkage.membersOf(record);
  for (const field of record.fields) {
    if (named.has(field)) continue;
    const place = machine.memory.member(object, field);
    const initializer = members?.fieldInitializers.get(field.name)?.();
    if (initializer !== undefined) initialize(machine, place, initializer);
    else if (field.type.kind === "record") initializeFields(machine, field.type.record, place, new Set());
  }
}
