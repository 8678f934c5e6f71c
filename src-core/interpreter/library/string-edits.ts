import type { FunctionSymbol } from "../../reader/typed/nodes.ts";
import type { OutsideBody } from "../outcome.ts";
import { isSpace, toLower, toUpper } from "./characters.ts";
import { pieceOf } from "./pieces.ts";
import { pieceBytes, StringObject, usualForm } from "./string-object.ts";
import { indexOfBytes } from "./text-search.ts";
import { numberAt, type Passed } from "./values.ts";

type Edit = (bytes: readonly number[], parameters: Passed) => readonly number[];

function trimmed(bytes: readonly number[]): readonly number[] {
  const first = bytes.findIndex((byte) => !isSpace(byte));
  return first < 0 ? [] : bytes.slice(first, bytes.findLastIndex((byte) => !isSpace(byte)) + 1);
}

function replaced(
  bytes: readonly number[],
  what: readonly number[],
  by: readonly number[],
): readonly number[] {
  if (what.length === 0) return bytes;
  const result: number[] = [];
  let from = 0;
  for (let at = indexOfBytes(bytes, what); at >= 0; at = indexOfBytes(bytes, what, from)) {
    result.push(...bytes.slice(from, at), ...by);
    from = at + what.length;
  }
  return [...result, ...bytes.slice(from)];
}

const edits: Readonly<Record<string, Edit>> = {
  setCharAt: (bytes, parameters) =>
    bytes.map((byte, index) => (index === numberAt(parameters, 1) ? numberAt(parameters, 2) & 0xff : byte)),
  remove(bytes, parameters) {
    const index = numberAt(parameters, 1);
    const count = parameters.length > 2 ? numberAt(parameters, 2) : bytes.length;
    return [...bytes.slice(0, index), ...bytes.slice(index + count)];
  },
  toLowerCase: (bytes) => bytes.map(toLower),
  toUpperCase: (bytes) => bytes.map(toUpper),
  trim: trimmed,
};

const reserve: OutsideBody = (parameters, memory, surroundings) =>
  new StringObject(numberAt(parameters, 0), memory, surroundings).reserve(numberAt(parameters, 1)) ? 1 : 0;

/** Builds the part between two indexes, whichever comes first, where the result is to lie. */
const substring: OutsideBody = (parameters, memory, surroundings) => {
  const string = new StringObject(numberAt(parameters, 1), memory, surroundings);
  const begin = numberAt(parameters, 2);
  const end = parameters.length > 3 ? numberAt(parameters, 3) : string.length;
  const part = new StringObject(numberAt(parameters, 0), memory, surroundings);
  const bytes = string.bytes.slice(Math.min(begin, end), Math.max(begin, end));
  part.begin();
  part.assign(bytes);
  return undefined;
};

function replace({ type }: FunctionSymbol): OutsideBody | undefined {
  const piece = pieceOf(type.parameters[0]);
  if (piece === undefined) return undefined;
  return (parameters, memory, surroundings) => {
    const string = new StringObject(numberAt(parameters, 0), memory, surroundings);
    const [what = [], by = []] = [1, 2].map((at) =>
      pieceBytes(piece, numberAt(parameters, at), usualForm, memory, surroundings),
    );
    if (string.buffer !== 0) string.assign(replaced(string.bytes, what, by));
    return undefined;
  };
}

/** Member functions that change the string or make another of it; undefined for others. */
export function stringEdits(symbol: FunctionSymbol): OutsideBody | undefined {
  const { name } = symbol;
  if (name === "reserve") return reserve;
  if (name === "substring") return substring;
  if (name === "replace") return replace(symbol);
  const edit = Object.hasOwn(edits, name) ? edits[name] : undefined;
  if (edit === undefined) return undefined;
  return (parameters, memory, surroundings) => {
    const string = new StringObject(numberAt(parameters, 0), memory, surroundings);
    if (string.buffer !== 0) string.assign(edit(string.bytes, parameters));
    return undefined;
  };
}
