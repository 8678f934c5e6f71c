/** Random numbers from a seed (mulberry32), so that a failure can be repeated. */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

const literals = [
  "0",
  "1",
  "2",
  "3",
  "7",
  "10",
  "44",
  "100",
  "127",
  "128",
  "200",
  "255",
  "256",
  "1000",
  "1200",
  "9600",
  "32767",
  "32768",
  "40000",
  "65535",
  "65536",
  "100000",
  "16000000",
  "2147483647",
  "2147483648",
  "0xF4",
  "0x80",
  "0xFF00",
  "0x8000",
  "0xFFFF",
  "0x10000",
  "0x80000000",
  "0xFFFFFFFF",
  "017",
  "0b1010",
  "'M'",
  "'\\xff'",
  "'0'",
];
const suffixes = ["", "", "", "u", "UL", "L", "LL", "ULL"];
const casts = [
  "char",
  "signed char",
  "unsigned char",
  "short",
  "unsigned short",
  "int",
  "unsigned",
  "long",
  "unsigned long",
  "long long",
  "unsigned long long",
  "_Bool",
];
const operators = ["+", "-", "*", "&", "|", "^", "<", ">", "<=", ">=", "==", "!=", "&&", "||"];

const unsignedTypes = ["unsigned", "unsigned long", "unsigned long long"];

/**
 * A constant expression whose result the language fixes, up to signed overflow, which GCC wraps: shifts stay
 * within the narrowest type and shift nothing signed to the left (GCC takes that for no constant in C), divisors are made odd so that none is zero and none is -1 of the smallest value.
 */
export function expressionFrom(random: () => number, depth: number): string {
  const pick = <Item>(items: readonly Item[]): Item => {
    const item = items[Math.floor(random() * items.length)];
    if (item === undefined) throw new Error("an empty list");
    return item;
  };
  const inner = () => expressionFrom(random, depth - 1);
  if (depth === 0) {
    const literal = pick(literals);
    return literal.startsWith("'") ? literal : `${literal}${pick(suffixes)}`;
  }
  switch (Math.floor(random() * 9)) {
    case 0:
      return `(${pick(casts)})(${inner()})`;
    case 1:
      return `${pick(["-", "~", "!", "+"])}(${inner()})`;
    case 2:
      return `(${inner()} ? ${inner()} : ${inner()})`;
    case 3:
      return `((${inner()}) >> ${Math.floor(random() * 15)})`;
    case 4:
      return `((${pick(unsignedTypes)})(${inner()}) << ${Math.floor(random() * 15)})`;
    case 5:
      return `((${inner()}) ${pick(["/", "%"])} (((${inner()}) & 0x7F) | 1))`;
    default:
      return `(${inner()} ${pick(operators)} ${inner()})`;
  }
}
