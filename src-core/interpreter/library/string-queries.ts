import type { FunctionSymbol } from "../../reader/typed/nodes.ts";
import type { OutsideBody, Surroundings, TargetMemory } from "../outcome.ts";
import { toLower } from "./characters.ts";
import { parseDecimal, parseDouble } from "./number-parsing.ts";
import { pieceOf } from "./pieces.ts";
import { pieceBytes, StringObject, usualForm } from "./string-object.ts";
import { writeText } from "./target-text.ts";
import { indexOfBytes } from "./text-search.ts";
import { asDouble, numberAt, type Passed } from "./values.ts";

/** A string, the text of the first parameter (empty for an invalid one), and numbers behind it. */
interface Question {
  readonly bytes: readonly number[];
  readonly other: readonly number[];
  /** What is sought is one character. */
  readonly isCharacter: boolean;
  readonly parameters: Passed;
}

type Answer = (question: Question) => number;

/** Difference of the first characters that differ, as strcmp gives it. */
function compare(left: readonly number[], right: readonly number[]): number {
  for (let index = 0; index < Math.max(left.length, right.length); index += 1) {
    const difference = (left[index] ?? 0) - (right[index] ?? 0);
    if (difference !== 0) return difference;
  }
  return 0;
}

function lastIndexOf(bytes: readonly number[], what: readonly number[], from: number): number {
  if (what.length === 0) return -1;
  for (let start = Math.min(from, bytes.length - what.length); start >= 0; start -= 1) {
    if (what.every((byte, index) => bytes[start + index] === byte)) return start;
  }
  return -1;
}

const answers: Readonly<Record<string, Answer>> = {
  compareTo: ({ bytes, other }) => compare(bytes, other),
  equals: ({ bytes, other }) => Number(compare(bytes, other) === 0),
  "operator==": ({ bytes, other }) => Number(compare(bytes, other) === 0),
  "operator!=": ({ bytes, other }) => Number(compare(bytes, other) !== 0),
  "operator<": ({ bytes, other }) => Number(compare(bytes, other) < 0),
  "operator>": ({ bytes, other }) => Number(compare(bytes, other) > 0),
  "operator<=": ({ bytes, other }) => Number(compare(bytes, other) <= 0),
  "operator>=": ({ bytes, other }) => Number(compare(bytes, other) >= 0),
  equalsIgnoreCase: ({ bytes, other }) => Number(compare(bytes.map(toLower), other.map(toLower)) === 0),
  startsWith({ bytes, other, parameters }) {
    const from = numberAt(parameters, 2);
    return Number(
      from + other.length <= bytes.length && other.every((byte, at) => bytes[from + at] === byte),
    );
  },
  endsWith: ({ bytes, other }) =>
    Number(other.length <= bytes.length && compare(bytes.slice(bytes.length - other.length), other) === 0),
  indexOf({ bytes, other, parameters }) {
    const from = numberAt(parameters, 2);
    return from >= bytes.length ? -1 : indexOfBytes(bytes, other, from);
  },
  lastIndexOf({ bytes, other, isCharacter, parameters }) {
    if (parameters.length < 3) return lastIndexOf(bytes, other, bytes.length);
    const from = numberAt(parameters, 2);
    // A character is not sought from behind the end; a text is.
    return isCharacter && from >= bytes.length ? -1 : lastIndexOf(bytes, other, from);
  },
};

/** Questions without a text of their own. */
const plain: Readonly<Record<string, (string: StringObject, call: Call) => number>> = {
  length: ({ length }) => length,
  c_str: ({ buffer }) => buffer,
  begin: ({ buffer }) => buffer,
  end: ({ buffer, length }) => buffer + length,
  charAt: ({ bytes }, { parameters }) => bytes[numberAt(parameters, 1)] ?? 0,
  toInt: ({ bytes }) => parseDecimal(bytes),
  toFloat: ({ bytes }, { surroundings }) => asDouble(parseDouble(bytes).value, surroundings.model),
  toDouble: ({ bytes }, { surroundings }) => asDouble(parseDouble(bytes).value, surroundings.model),
  getBytes: copyOut,
  toCharArray: copyOut,
};

interface Call {
  readonly parameters: Passed;
  readonly memory: TargetMemory;
  readonly surroundings: Surroundings;
}

/** Copies as much from an index on as a buffer holds besides the terminating zero. */
function copyOut({ bytes }: StringObject, { parameters, memory }: Call): number {
  const [to = 0, size = 0, index = 0] = [1, 2, 3].map((at) => numberAt(parameters, at));
  if (size > 0 && to !== 0) writeText(memory, to, bytes.slice(index, index + size - 1));
  return 0;
}

const NOWHERE = "String: nowhere";

/** Where a character lies, or a place of no consequence where there is none. */
function placeOf(string: StringObject, { parameters, memory, surroundings }: Call): number {
  const index = numberAt(parameters, 1);
  if (string.buffer !== 0 && index < string.length) return string.buffer + index;
  const nowhere = surroundings.kept.get(NOWHERE) ?? memory.allocate(1);
  surroundings.kept.set(NOWHERE, nowhere);
  memory.writeByte(nowhere, 0);
  return nowhere;
}

function fromString(answer: (string: StringObject, call: Call) => number): OutsideBody {
  return (parameters, memory, surroundings) =>
    answer(new StringObject(numberAt(parameters, 0), memory, surroundings), {
      parameters,
      memory,
      surroundings,
    });
}

/** Member functions that leave the string as it is; undefined for others. */
export function stringQueries({ name, type }: FunctionSymbol): OutsideBody | undefined {
  if (name === "operator[]") {
    return fromString(type.returns.kind === "reference" ? placeOf : (plain.charAt ?? placeOf));
  }
  const simple = Object.hasOwn(plain, name) ? plain[name] : undefined;
  if (simple !== undefined) return fromString(simple);
  const answer = Object.hasOwn(answers, name) ? answers[name] : undefined;
  const piece = pieceOf(type.parameters[0]);
  if (answer === undefined || piece === undefined) return undefined;
  return fromString(({ bytes }, { parameters, memory, surroundings }) => {
    const other = pieceBytes(piece, numberAt(parameters, 1), usualForm, memory, surroundings) ?? [];
    return answer({ bytes, other, isCharacter: piece.kind === "character", parameters });
  });
}
