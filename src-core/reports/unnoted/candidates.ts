import type { Program } from "../../reader/program/program.ts";
import type {
  FunctionDefinition,
  FunctionSymbol,
  TypedExpression,
  TypedUnit,
} from "../../reader/typed/nodes.ts";
import { walkStatement } from "../../reader/typed/walk.ts";
import { referred } from "../../reader/types/derive.ts";
import type { Type } from "../../reader/types/types.ts";
import { unitOf } from "../unit-of.ts";

/** A function that may build a report, with the names that a note could use. */
export interface Candidate {
  readonly symbol: FunctionSymbol;
  readonly unit: TypedUnit;
  /** Whole numbers that may go in, as notes write them. */
  readonly inputs: readonly string[];
  /** Arrays and functions that its bytes may go to. */
  readonly outlets: readonly string[];
}

/** So many inputs at most: a report has eight fields. */
const mostInputs = 16;
/** Bytes that a report has at least. */
const fewestBytes = 3;

/** The author's functions that take whole numbers and write at least three bytes somewhere. */
export function candidates(program: Program, noted: ReadonlySet<FunctionSymbol>): readonly Candidate[] {
  return program.functions.flatMap((symbol) => {
    const { definition } = symbol;
    if (definition === undefined || noted.has(symbol) || symbol.vector !== undefined) return [];
    const unit = unitOf(program, symbol);
    if (unit === undefined) return [];
    const outlets = outletsOf(symbol, definition, unit);
    if (outlets.length === 0) return [];
    const inputs = [...inputsOf(symbol), ...globalsIn(definition)].slice(0, mostInputs);
    return inputs.length < 2 ? [] : [{ symbol, unit, inputs, outlets }];
  });
}

/** Parameters that are whole numbers, and whole numbers in what else is passed or in the object itself. */
function inputsOf({ parameterNames, type, memberOf }: FunctionSymbol): readonly string[] {
  const ofParameters = parameterNames.flatMap((name, index) => {
    const parameter = type.parameters[index];
    if (name === undefined || parameter === undefined) return [];
    if (isInteger(parameter)) return [name];
    const inner = parameter.kind === "pointer" ? parameter.to : referred(parameter);
    return fieldsIn(inner).map((field) => `${name}${parameter.kind === "pointer" ? "->" : "."}${field}`);
  });
  const ofObject = memberOf === undefined ? [] : fieldsIn({ kind: "record", record: memberOf });
  return [...ofParameters, ...ofObject];
}

/** Whole numbers at file level that the function names. */
function globalsIn({ body }: FunctionDefinition): readonly string[] {
  const names = new Set<string>();
  walkStatement(body, {
    expression: (expression) => {
      if (expression.kind === "variable" && isGlobal(expression) && isInteger(expression.type))
        names.add(expression.variable.name);
      return true;
    },
  });
  return [...names];
}

function isGlobal({ variable }: Extract<TypedExpression, { kind: "variable" }>): boolean {
  return variable.storage === "global" || variable.storage === "file";
}

function fieldsIn(type: Type): readonly string[] {
  if (type.kind !== "record") return [];
  return type.record.fields.flatMap((field) =>
    field.name !== "" && isInteger(field.type) ? [field.name] : [],
  );
}

function isInteger(type: Type): boolean {
  return type.kind === "integer" && type.bits <= 32;
}

function outletsOf(symbol: FunctionSymbol, { body }: FunctionDefinition, unit: TypedUnit): readonly string[] {
  const counts = new Map<string, number>();
  const count = (name: string | undefined, times = 1): void => {
    if (name !== undefined) counts.set(name, (counts.get(name) ?? 0) + times);
  };
  for (const pointer of bytePointers(symbol)) counts.set(pointer, fewestBytes);
  for (const union of bytesBehindUnions(symbol, unit)) counts.set(union, fewestBytes);
  walkStatement(body, {
    expression: (expression) => {
      if (expression.kind === "assign" || expression.kind === "compound-assign") {
        const { target } = expression;
        count(
          arrayName(target),
          target.kind === "index" && target.index.kind !== "integer" ? fewestBytes : 1,
        );
      }
      if (expression.kind === "call") count(senderName(expression));
      if (expression.kind === "method-call") count(methodName(symbol, expression));
      return true;
    },
  });
  return [...counts].filter(([, number]) => number >= fewestBytes).map(([name]) => name);
}

/** Parameters through which bytes can be written. */
function bytePointers({ parameterNames, type }: FunctionSymbol): readonly string[] {
  return parameterNames.flatMap((name, index) => {
    const parameter = type.parameters[index];
    const isOne = parameter?.kind === "pointer" && isByte(parameter.to) && parameter.to.const !== true;
    return name !== undefined && isOne ? [name] : [];
  });
}

/** `report->bytes` of a union of bytes and bit-fields, passed or at file level: it is written through the fields. */
function bytesBehindUnions({ parameterNames, type }: FunctionSymbol, unit: TypedUnit): readonly string[] {
  const ofParameters = parameterNames.flatMap((name, index) => {
    const parameter = type.parameters[index];
    if (name === undefined || (parameter?.kind !== "pointer" && parameter?.kind !== "reference")) return [];
    const bytes = bytesIn(parameter.to);
    return bytes === undefined ? [] : [`${name}${parameter.kind === "pointer" ? "->" : "."}${bytes}`];
  });
  const ofGlobals = unit.variables.flatMap(({ name, type: of }) => {
    const bytes = bytesIn(of);
    return bytes === undefined ? [] : [`${name}.${bytes}`];
  });
  return [...ofParameters, ...ofGlobals];
}

function bytesIn(type: Type): string | undefined {
  if (type.kind !== "record" || type.record.keyword !== "union") return undefined;
  return type.record.fields.find((field) => field.type.kind === "array" && isByte(field.type.of))?.name;
}

function isByte(type: Type): boolean {
  return type.kind === "integer" && type.bits === 8;
}

/** The array whose byte is assigned: a parameter, a global or a member. */
function arrayName(target: TypedExpression): string | undefined {
  const { type } = target;
  if (type.kind !== "integer" || type.bits !== 8) return undefined;
  if (target.kind === "index") return nameOf(target.array);
  if (target.kind === "dereference") return nameOf(target.operand);
  return undefined;
}

function nameOf(expression: TypedExpression): string | undefined {
  switch (expression.kind) {
    case "variable": {
      const { storage, name } = expression.variable;
      return storage === "local" || storage === "static-local" ? undefined : name;
    }
    case "member":
      return expression.object.kind === "dereference" && expression.object.operand.kind === "this"
        ? expression.field.name
        : undefined;
    case "convert":
    case "update":
      return nameOf(expression.operand);
    case "pointer-offset":
      return nameOf(expression.pointer);
    default:
      return undefined;
  }
}

function senderName(call: Extract<TypedExpression, { kind: "call" }>): string | undefined {
  const callee = call.callee.kind === "convert" ? call.callee.operand : call.callee;
  if (callee.kind !== "function") return undefined;
  return !callee.function.standIn && takesOneByte(callee.function, call.arguments)
    ? callee.function.name
    : undefined;
}

/** `send` of the function's own class; `Serial.write`, `port->write` of an object that a note can name. */
function methodName(
  { memberOf }: FunctionSymbol,
  { method, object, arguments: given }: Extract<TypedExpression, { kind: "method-call" }>,
): string | undefined {
  if (!takesOneByte(method, given)) return undefined;
  const of = object.kind === "convert" ? object.operand : object;
  const isBehind = of.kind === "dereference" && of.operand.type.kind === "pointer";
  const holder = nameOf(of.kind === "dereference" ? of.operand : of);
  if (holder !== undefined) return `${holder}${isBehind ? "->" : "."}${method.name}`;
  return memberOf !== undefined && method.memberOf === memberOf ? method.name : undefined;
}

function takesOneByte({ type }: FunctionSymbol, given: readonly TypedExpression[]): boolean {
  const [only] = type.parameters;
  return given.length === 1 && only?.kind === "integer" && only.bits <= 16;
}
