import { pointerTo, referred, unqualified } from "../types/derive.ts";
import { layoutRecord } from "../types/layout.ts";
import type { RecordDeclaration, Type } from "../types/types.ts";
import type { Context } from "./context.ts";
import type { CaptureDraft } from "./lambdas.ts";
import { convertNode, decayed } from "./make.ts";
import { functionNode } from "./name-expressions.ts";
import type { At, ConversionReason, FunctionSymbol, TypedCapture, TypedExpression } from "./nodes.ts";
import { makeScope } from "./scope.ts";

/** What classes of lambdas are called, for want of a name. */
export const closureName = "lambda";

/** The class of a lambda (C++11 5.1.2p3) before its function is known. */
interface Closure {
  readonly record: RecordDeclaration;
  readonly captures: readonly TypedCapture[];
  /** Where the object of the function around it is kept. */
  readonly self: TypedCapture["field"] | undefined;
  addCall(symbol: FunctionSymbol): void;
}

/** Declares the class of a lambda: a field for each capture, references as pointers. */
export function declareClosure(
  context: Context,
  drafts: readonly CaptureDraft[],
  holdsThis: boolean,
  at: At,
): Closure {
  const { unit } = context;
  const pointer = pointerTo(unit.types.void);
  const member = (name: string, type: Type) => ({
    name,
    type,
    bitWidth: undefined,
    packed: false,
    mutable: false,
    at,
  });
  const members = drafts.map(({ variable, reference }) =>
    member(variable.name, reference ? pointer : unqualified(referred(variable.type))),
  );
  const layout = layoutRecord(
    {
      keyword: "class",
      language: "c++",
      bases: [],
      members: holdsThis ? [...members, member("this", pointer)] : members,
      packed: false,
      aligned: 1,
      ownTable: false,
    },
    unit.model,
  );
  const record: RecordDeclaration = {
    keyword: "class",
    name: closureName,
    complete: true,
    polymorphic: false,
    ...layout,
  };
  const scope = makeScope("record", context.scope, `${closureName}::`, record);
  const functions: FunctionSymbol[] = [];
  unit.classes.set(record, { record, ownName: "", scope, functions, fieldInitializers: new Map() });
  return {
    record,
    captures: drafts.flatMap((draft, index) => {
      const field = layout.fields[index];
      return field === undefined ? [] : { ...draft, field };
    }),
    self: holdsThis ? layout.fields[drafts.length] : undefined,
    addCall(symbol) {
      functions.push(symbol);
      unit.closures.set(record, symbol);
      scope.names.set("operator()", { kind: "overloads", name: symbol.name, functions, templates: [] });
    },
  };
}

/** The function of a lambda that captures nothing, which a pointer can lead to (C++11 5.1.2p6). */
export function plainCallOf(context: Context, type: Type): FunctionSymbol | undefined {
  const symbol = type.kind === "record" ? context.unit.closures.get(type.record) : undefined;
  return symbol?.isStatic === true ? symbol : undefined;
}

/** The same, where such a pointer is wanted. */
export function closureFunction(context: Context, from: Type, target: Type): FunctionSymbol | undefined {
  if (target.kind !== "pointer" || target.to.kind !== "function") return undefined;
  return plainCallOf(context, from);
}

/** A lambda as a pointer to its function. */
export function closurePointer(
  lambda: TypedExpression,
  symbol: FunctionSymbol,
  reason: ConversionReason,
): TypedExpression {
  if (lambda.kind === "variable") return decayed(functionNode(symbol, lambda.at));
  return convertNode(lambda, pointerTo(symbol.type), reason);
}
