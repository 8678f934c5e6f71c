import type { FunctionSymbol } from "../../reader/typed/nodes.ts";
import type { Type } from "../../reader/types/types.ts";
import type { OutsideBody, Surroundings } from "../outcome.ts";
import { type Piece, pieceOf } from "./pieces.ts";
import { stringEdits } from "./string-edits.ts";
import { type NumberForm, pieceBytes, StringObject, usualForm } from "./string-object.ts";
import { stringQueries } from "./string-queries.ts";
import { numberAt } from "./values.ts";

/** A base or a number of decimals is one parameter, whichever the value takes. */
function formAt(given: number): NumberForm {
  return { base: given, decimals: given };
}

/** What the first parameter's text does to the string. */
function withText(
  { type }: FunctionSymbol,
  act: (string: StringObject, bytes: number[] | undefined) => number | undefined,
): OutsideBody | undefined {
  const piece = pieceOf(type.parameters[0]);
  if (piece === undefined) return undefined;
  return (parameters, memory, surroundings) => {
    const form = parameters.length > 2 ? formAt(numberAt(parameters, 2)) : usualForm;
    const bytes = pieceBytes(piece, numberAt(parameters, 1), form, memory, surroundings);
    return act(new StringObject(numberAt(parameters, 0), memory, surroundings), bytes);
  };
}

/** Appends a text. The core copies a string's own text onto itself behind its end, and does not come to one. */
function append(
  string: StringObject,
  piece: Piece,
  value: number,
  bytes: number[] | undefined,
  { refuse }: Surroundings,
): boolean {
  const isOwn =
    piece.kind === "string"
      ? value === string.address
      : piece.kind === "text" && value >= string.buffer && value <= string.buffer + string.length;
  if (isOwn && string.length > 0) refuse("a string appended to itself");
  return string.append(bytes);
}

/** `left + right`: the sum that `left` is, and that gets longer. */
export function stringSum({ type }: FunctionSymbol): OutsideBody | undefined {
  const piece = pieceOf(type.parameters[1]);
  if (!isSum(type.parameters[0]) || piece === undefined) return undefined;
  return (parameters, memory, surroundings) => {
    const sum = new StringObject(numberAt(parameters, 0), memory, surroundings);
    const value = numberAt(parameters, 1);
    const bytes = pieceBytes(piece, value, usualForm, memory, surroundings);
    if (!append(sum, piece, value, bytes, surroundings)) sum.invalidate();
    return sum.address;
  };
}

function isSum(type: Type | undefined): boolean {
  return type?.kind === "reference" && type.to.kind === "record" && type.to.record.name === "StringSumHelper";
}

/** `concat` tells whether it could, `+=` gives the string. */
function appending({ type, name }: FunctionSymbol): OutsideBody | undefined {
  const piece = pieceOf(type.parameters[0]);
  if (piece === undefined) return undefined;
  return (parameters, memory, surroundings) => {
    const string = new StringObject(numberAt(parameters, 0), memory, surroundings);
    const value = numberAt(parameters, 1);
    const bytes = pieceBytes(piece, value, usualForm, memory, surroundings);
    const could = append(string, piece, value, bytes, surroundings);
    return name === "concat" ? Number(could) : string.address;
  };
}

/** Takes the text out of a string that is about to end. */
function taking({ special, type }: FunctionSymbol): OutsideBody | undefined {
  const [only] = type.parameters;
  if (only?.kind !== "reference" || !only.rvalue) return undefined;
  return (parameters, memory, surroundings) => {
    const string = new StringObject(numberAt(parameters, 0), memory, surroundings);
    if (special === "constructor") string.begin();
    const other = new StringObject(numberAt(parameters, 1), memory, surroundings);
    if (other.address !== string.address) string.take(other);
    return special === "constructor" ? undefined : string.address;
  };
}

const destroy: OutsideBody = (parameters, memory, surroundings) => {
  new StringObject(numberAt(parameters, 0), memory, surroundings).invalidate();
  return undefined;
};

const isValid: OutsideBody = (parameters, memory, surroundings) =>
  new StringObject(numberAt(parameters, 0), memory, surroundings).buffer === 0 ? 0 : 1;

/** Member functions of the sketch core's class String, as its language reference describes them. */
export function stringMethod(symbol: FunctionSymbol): OutsideBody | undefined {
  const take = taking(symbol);
  if (take !== undefined) return take;
  switch (symbol.special) {
    case "destructor":
      return destroy;
    case "conversion":
      return isValid;
    case "constructor":
      return withText(symbol, (string, bytes) => {
        string.begin();
        if (bytes !== undefined) string.assign(bytes);
        return undefined;
      });
    case "operator":
    case undefined:
      break;
  }
  switch (symbol.name) {
    case "operator=":
      return withText(symbol, (string, bytes) => {
        string.assign(bytes);
        return string.address;
      });
    case "concat":
    case "operator+=":
      return appending(symbol);
    default:
      return stringQueries(symbol) ?? stringEdits(symbol);
  }
}
