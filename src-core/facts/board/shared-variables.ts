import { evaluate } from "../../reader/constants/evaluate.ts";
import type { Program } from "../../reader/program/program.ts";
import type { FunctionSymbol, TypedExpression, TypedUnit, Variable } from "../../reader/typed/nodes.ts";
import type { DataModel, Field } from "../../reader/types/types.ts";
import { type Access, type LookedAt, type SharedPlace, UsesOfStatements } from "./accesses.ts";
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
  readonly inMain: readonly MainAccess[];
  /** All that is ever written to it are constants of one byte: its other bytes stay 0. */
  readonly fitsByte: boolean;
}

export interface MainAccess extends Access {
  /** It stands behind a look at a flag that the handler sets where it writes the object. */
  readonly handedOver: boolean;
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
  const uses = new UsesOfStatements(program);
  const inHandlers = sides.handlers.flatMap((handler) =>
    accessesFrom([startOf(handler)], uses).map((access) => ({ ...access, handler })),
  );
  const inProgram = accessesFrom(
    sides.program.flatMap((symbol) =>
      STARTS.has(symbol.name) ? onceInterruptsCome(symbol, uses) : [startOf(symbol)],
    ),
    uses,
  );
  const inMain = inProgram.filter((access) => !access.interruptsOff);
  const members = memberIdentities(units);
  const throughThis = membersOfThis([...inHandlers, ...inMain], members);
  const identity = (place: SharedPlace): Identity => identityOf(place, throughThis, members);
  const byObject = new Map<Identity, { handlers: HandlerAccess[]; main: Access[] }>();
  const entryOf = (access: Access) => {
    const key = identity(access.place);
    const entry = byObject.get(key) ?? { handlers: [], main: [] };
    byObject.set(key, entry);
    return entry;
  };
  for (const access of inHandlers) entryOf(access).handlers.push(access);
  for (const access of inMain) entryOf(access).main.push(access);
  const large = new Set<Identity>();
  for (const access of [...inHandlers, ...inProgram]) {
    if (writes(access) && !writesByte(access, program.model)) large.add(identity(access.place));
  }
  const isHandedOver = (access: Access, handlers: readonly HandlerAccess[]): boolean => {
    if (access.lookedAt.length === 0) return false;
    const own = identity(access.place);
    const writers = new Set(handlers.filter(writes).map(({ handler }) => handler));
    const flags = access.lookedAt.flatMap((looked) => placesLookedAt(looked, uses)).map(identity);
    return flags.some(
      (flag) =>
        flag !== own &&
        byObject.get(flag)?.handlers.some((each) => writes(each) && writers.has(each.handler)) === true,
    );
  };
  return [...byObject.values()].flatMap(({ handlers, main }) => {
    const meeting = meetingAccesses(handlers, main, members);
    const object = meeting && objectOf(meeting.inHandlers, throughThis, members, units);
    if (meeting === undefined || object === undefined) return [];
    const placed = meeting.inMain.map((each) => ({ ...each, handedOver: isHandedOver(each, handlers) }));
    const fitsByte = !handlers.some(({ place }) => large.has(identity(place)));
    return [{ ...object, inHandlers: meeting.inHandlers, inMain: placed, fitsByte }];
  });
}

const LARGEST_BYTE = 255n;

function writesByte({ value, type }: Access, model: DataModel): boolean {
  if (type.kind === "enumeration") return type.enumeration.enumerators.every((each) => isByte(each.value));
  return value !== undefined && givesByte(value, model);
}

function givesByte(value: TypedExpression, model: DataModel): boolean {
  if (value.kind === "convert") return givesByte(value.operand, model);
  if (value.kind === "conditional") return givesByte(value.then, model) && givesByte(value.otherwise, model);
  const constant = evaluate(value, model);
  return constant.kind === "integer" && isByte(constant.value);
}

function isByte(value: bigint | undefined): boolean {
  return value !== undefined && value >= 0n && value <= LARGEST_BYTE;
}

interface HandlerAccess extends Access {
  /** Where the run began that comes to it. */
  readonly handler: FunctionSymbol;
}

/** The place itself, or what the function reads that was called to look. */
function placesLookedAt(looked: LookedAt, uses: UsesOfStatements): readonly SharedPlace[] {
  if (!("kind" in looked)) return [looked];
  const callee = uses.program.definitionOf(looked);
  if (callee === undefined) return [];
  const { accesses } = uses.in(callee, startOf(callee).statements);
  return accesses.filter(reads).map(({ place }) => place);
}

/** Those accesses that touch the same member, if one side writes what the other reads. */
function meetingAccesses(
  handlers: readonly Access[],
  main: readonly Access[],
  members: Members,
): { readonly inHandlers: readonly Access[]; readonly inMain: readonly Access[] } | undefined {
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

function identityOf(place: SharedPlace, throughThis: ReadonlySet<Identity>, members: Members): Identity {
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
