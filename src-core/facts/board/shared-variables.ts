import type { Program } from "../../reader/program/program.ts";
import type { FunctionSymbol, TypedUnit, Variable } from "../../reader/typed/nodes.ts";
import type { Field } from "../../reader/types/types.ts";
import type { Access } from "./accesses.ts";
import { accessesFrom, onceInterruptsCome, startOf } from "./main-code.ts";

/** Something that an interrupt handler and the main code both use, one of them writing what the other reads. */
export interface SharedObject {
  readonly object:
    | { readonly kind: "variable"; readonly variable: Variable }
    | { readonly kind: "member"; readonly field: Field };
  readonly name: string;
  /** In the handlers and in what they call. */
  readonly inHandlers: readonly Access[];
  /** Where interrupts can come; what runs before they are on, or while they are off, is not among them. */
  readonly inMain: readonly Access[];
}

export interface Sides {
  readonly handlers: readonly FunctionSymbol[];
  /** Functions that start outside of interrupts: `main`, `setup`, `loop`, and those nobody calls. */
  readonly program: readonly FunctionSymbol[];
}

/** Functions that run once, with a part before interrupts come. */
const STARTS: ReadonlySet<string> = new Set(["main", "setup"]);

export function sharedObjects(program: Program, sides: Sides): readonly SharedObject[] {
  const units = program.units.map((unit) => unit.typed);
  if (sides.handlers.length === 0) return [];
  const inHandlers = accessesFrom(sides.handlers.map(startOf), program);
  const inMain = accessesFrom(
    sides.program.flatMap((symbol) =>
      STARTS.has(symbol.name) ? onceInterruptsCome(symbol, program) : [startOf(symbol)],
    ),
    program,
  ).filter((access) => !access.interruptsOff);
  const members = memberIdentities(units);
  const throughThis = membersOfThis([...inHandlers, ...inMain], members);
  const byObject = new Map<Identity, { handlers: Access[]; main: Access[] }>();
  const sort = (accesses: readonly Access[], side: "handlers" | "main") => {
    for (const access of accesses) {
      const key = identityOf(access, throughThis, members);
      const entry = byObject.get(key) ?? { handlers: [], main: [] };
      entry[side].push(access);
      byObject.set(key, entry);
    }
  };
  sort(inHandlers, "handlers");
  sort(inMain, "main");
  return [...byObject.values()].flatMap(({ handlers, main }) => {
    const meeting = meetingAccesses(handlers, main, members);
    const object = meeting && objectOf(meeting.inHandlers, throughThis, members, units);
    return meeting && object ? [{ ...object, ...meeting }] : [];
  });
}

/** Those accesses that touch the same member, if one side writes what the other reads. */
function meetingAccesses(
  handlers: readonly Access[],
  main: readonly Access[],
  members: Members,
): Pick<SharedObject, "inHandlers" | "inMain"> | undefined {
  const meets = (one: Access, other: Access) =>
    (one.place.field === undefined ||
      other.place.field === undefined ||
      members(one.place.field) === members(other.place.field)) &&
    ((writes(one) && reads(other)) || (reads(one) && writes(other)));
  const inHandlers = handlers.filter((one) => main.some((other) => meets(one, other)));
  const inMain = main.filter((one) => handlers.some((other) => meets(other, one)));
  return inHandlers.length > 0 ? { inHandlers, inMain } : undefined;
}

function writes(access: Access): boolean {
  return access.mode !== "read";
}

function reads(access: Access): boolean {
  return access.mode !== "write";
}

/** What tells objects of several units apart: the name for linking, the place of a member, or the object itself. */
type Identity = Variable | Field | string;

type Members = (field: Field) => Identity;

/** A class in a header is another object in each unit that includes it: its members are known by their place. */
function memberIdentities(units: readonly TypedUnit[]): Members {
  const places = new Map<Field, string>();
  for (const unit of units) {
    for (const [field, { first }] of unit.fieldPlaces) {
      places.set(field, `member at ${first.file}:${first.start} ${field.name}`);
    }
  }
  return (field) => places.get(field) ?? field;
}

/** Members that some function uses through `this`: they are told apart by member, not by object. */
function membersOfThis(accesses: readonly Access[], members: Members): ReadonlySet<Identity> {
  const found = new Set<Identity>();
  for (const { place } of accesses) {
    if (place.variable === undefined && place.field !== undefined) found.add(members(place.field));
  }
  return found;
}

function identityOf({ place }: Access, throughThis: ReadonlySet<Identity>, members: Members): Identity {
  const member = place.field && members(place.field);
  if (member !== undefined && throughThis.has(member)) return member;
  return place.variable?.linkageName ?? place.variable ?? member ?? "";
}

function objectOf(
  accesses: readonly Access[],
  throughThis: ReadonlySet<Identity>,
  members: Members,
  units: readonly TypedUnit[],
): Pick<SharedObject, "object" | "name"> | undefined {
  const place = accesses[0]?.place;
  if (place === undefined) return undefined;
  if (place.field !== undefined && throughThis.has(members(place.field))) {
    return { object: { kind: "member", field: place.field }, name: place.field.name };
  }
  if (place.variable === undefined) return undefined;
  const variable = definingVariable(place.variable, units);
  return { object: { kind: "variable", variable }, name: variable.name };
}

/** The variable of the unit that defines it, for one that other units declare. */
function definingVariable(variable: Variable, units: readonly TypedUnit[]): Variable {
  const { linkageName } = variable;
  if (linkageName === undefined) return variable;
  const same = units.flatMap((unit) => unit.variables).filter((each) => each.linkageName === linkageName);
  return same.find((each) => !isExtern(each)) ?? variable;
}

function isExtern(variable: Variable): boolean {
  return variable.declarationAt.first.text === "extern" && variable.initializer === undefined;
}
