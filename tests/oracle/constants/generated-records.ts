/** A record with its text and the members that can be looked at from outside. */
export interface RecordCase {
  readonly name: string;
  readonly text: string;
  readonly members: readonly RecordMember[];
}

export interface RecordMember {
  readonly name: string;
  readonly isBitField: boolean;
}

const plainTypes = [
  "char",
  "signed char",
  "unsigned char",
  "_Bool",
  "short",
  "unsigned short",
  "int",
  "unsigned int",
  "long",
  "unsigned long",
  "long long",
  "float",
  "void *",
];
const fieldTypes: readonly (readonly [name: string, bits: number])[] = [
  ["unsigned char", 8],
  ["signed char", 8],
  ["unsigned short", 16],
  ["unsigned int", 16],
  ["int", 16],
  ["unsigned long", 32],
];

/** A struct or union of random members: plain ones, arrays, bit-fields, unnamed and zero-width ones among them. */
export function recordFrom(random: () => number, name: string): RecordCase {
  const below = (limit: number) => Math.floor(random() * limit);
  const lines: string[] = [];
  const members: RecordMember[] = [];
  const isUnion = below(6) === 0;
  const count = 1 + below(7);
  for (let index = 0; index < count; index += 1) {
    const member = `m${index}`;
    const kind = below(10);
    const [fieldType, bits] = fieldTypes[below(fieldTypes.length)] ?? ["int", 16];
    if (kind < 4) {
      lines.push(`${plainTypes[below(plainTypes.length)] ?? "int"} ${member}${below(4) === 0 ? "[3]" : ""};`);
      members.push({ name: member, isBitField: false });
    } else if (kind < 8) {
      lines.push(`${fieldType} ${member} : ${1 + below(bits)};`);
      members.push({ name: member, isBitField: true });
    } else if (kind === 8 && !isUnion) {
      lines.push(`${fieldType} : ${below(3) === 0 ? 0 : 1 + below(bits)};`);
    } else {
      lines.push(`struct { char inner_${member}; int other_${member}[2]; } ${member};`);
      members.push({ name: member, isBitField: false });
    }
  }
  const packed = below(5) === 0 ? " __attribute__((packed))" : "";
  const text = `${isUnion ? "union" : "struct"} ${name} { ${lines.join(" ")} }${packed};`;
  return { name, text, members };
}
