import { describe, expect, test } from "vitest";
import { avrModel, ilp32Model } from "../../../src-core/reader/types/data-models.ts";
import { sizeOf } from "../../../src-core/reader/types/layout.ts";
import type { DataModel, Field } from "../../../src-core/reader/types/types.ts";
import { randomSeed } from "../../random-seed.ts";
import { typeSource } from "../../src-core/reader/typed/type-source.ts";
import { avrC, type Compiler, ilp32C, sectionsOf } from "./avr-compiler.ts";
import { randomFrom } from "./generated.ts";
import { type RecordCase, recordFrom } from "./generated-records.ts";

/** Room for the image of one record in the compiled table. */
const imageBytes = 160;

/** Size, alignment and, by member, the place of its bits: all ones in an image of zeros. */
interface Shape {
  readonly size: number;
  readonly members: readonly (readonly [name: string, place: string])[];
}

/** Records compiled into a table of sizes, a table of offsets and images with one bit-field filled with ones. */
function compileRecords(compiler: Compiler, records: readonly RecordCase[]): readonly Shape[] {
  const keyword = (record: RecordCase) => record.text.split(" ")[0] ?? "struct";
  const offsets: string[] = [];
  const images: string[] = [];
  for (const record of records) {
    const type = `${keyword(record)} ${record.name}`;
    for (const member of record.members) {
      if (!member.isBitField) offsets.push(`__builtin_offsetof(${type}, ${member.name})`);
      else images.push(`{ .${record.name} = { .${member.name} = -1 } }`);
    }
  }
  const union = records.map((record) => `${keyword(record)} ${record.name} ${record.name};`).join(" ");
  const text = [
    ...records.map((record) => record.text),
    `union image { unsigned char bytes[${imageBytes}]; ${union} };`,
    `const unsigned short sizes[] __attribute__((section(".sizes"), used)) = { ${records
      .map((record) => `sizeof(${keyword(record)} ${record.name})`)
      .join(", ")} };`,
    `const unsigned short offsets[] __attribute__((section(".offsets"), used)) = { ${offsets.join(", ")} };`,
    `const union image images[] __attribute__((section(".images"), used)) = { ${images.join(",\n")} };`,
  ].join("\n");
  const [sizes, places, pictures] = sectionsOf(compiler, text, [".sizes", ".offsets", ".images"]);
  if (sizes === undefined || places === undefined || pictures === undefined) throw new Error("no sections");
  const stride = pictures.length / images.length;
  let offset = 0;
  let image = 0;
  return records.map((record, index) => ({
    size: sizes.readUInt16LE(index * 2),
    members: record.members.map((member) => {
      if (!member.isBitField) return [member.name, `byte ${places.readUInt16LE(offset++ * 2)}`] as const;
      const picture = pictures.subarray(image * stride, (image + 1) * stride);
      image += 1;
      return [member.name, bitsOf(picture)] as const;
    }),
  }));
}

/** `bits 5 to 12` for the ones of an image. */
function bitsOf(image: Buffer): string {
  const ones: number[] = [];
  for (let bit = 0; bit < image.length * 8; bit += 1) {
    if (((image[bit >> 3] ?? 0) >> (bit & 7)) & 1) ones.push(bit);
  }
  const first = ones[0] ?? -1;
  const last = ones[ones.length - 1] ?? -1;
  return ones.length === last - first + 1 ? `bits ${first} to ${last}` : `scattered bits ${ones.join(" ")}`;
}

const placeOf = (field: Field): string =>
  field.bitWidth === undefined
    ? `byte ${field.bitOffset / 8}`
    : `bits ${field.bitOffset} to ${field.bitOffset + field.bitWidth - 1}`;

async function readRecords(records: readonly RecordCase[], model: DataModel): Promise<readonly Shape[]> {
  const source = records.map((record) => record.text).join("\n");
  const unit = await typeSource(source, "c", model);
  return records.map((record) => {
    const symbol = unit.symbols.find(
      (candidate) => candidate.kind === "type" && candidate.name === record.name,
    );
    if (symbol?.kind !== "type" || symbol.type.kind !== "record") throw new Error(`no ${record.name}`);
    const { fields } = symbol.type.record;
    return {
      size: sizeOf(symbol.type, model) ?? -1,
      members: fields.map((field) => [field.name, placeOf(field)] as const),
    };
  });
}

/** Records of one compilation: more have images larger than the memory of the chip. */
const batch = 30;

async function compare(compiler: Compiler, model: DataModel, records: readonly RecordCase[]): Promise<void> {
  for (let from = 0; from < records.length; from += batch) {
    await compareBatch(compiler, model, records.slice(from, from + batch));
  }
}

async function compareBatch(
  compiler: Compiler,
  model: DataModel,
  records: readonly RecordCase[],
): Promise<void> {
  const compiled = compileRecords(compiler, records);
  const ours = await readRecords(records, model);
  const told = (shapes: readonly Shape[]) => records.map((record, index) => [record.text, shapes[index]]);
  expect(told(ours)).toEqual(told(compiled));
}

const handPicked: readonly RecordCase[] = [
  {
    name: "two_button",
    text: "struct two_button { unsigned char y_high : 2, x_high : 2, right : 1, left : 1, sync : 1; unsigned char x : 6; unsigned char y : 6; };",
    members: ["y_high", "x_high", "right", "left", "sync", "x", "y"].map((name) => ({
      name,
      isBitField: true,
    })),
  },
  {
    name: "straddling",
    text: "struct straddling { unsigned int a : 6; unsigned int b : 12; unsigned long c : 20; unsigned char d : 3; };",
    members: ["a", "b", "c", "d"].map((name) => ({ name, isBitField: true })),
  },
  {
    name: "zero_width",
    text: "struct zero_width { unsigned char a : 3; unsigned char : 0; unsigned char b : 2; unsigned int : 0; unsigned char c : 1; };",
    members: ["a", "b", "c"].map((name) => ({ name, isBitField: true })),
  },
  {
    name: "mixture",
    text: "struct mixture { char a; unsigned int b : 5; long c; unsigned char d : 4; void *e; } __attribute__((packed));",
    members: [
      { name: "a", isBitField: false },
      { name: "b", isBitField: true },
      { name: "c", isBitField: false },
      { name: "d", isBitField: true },
      { name: "e", isBitField: false },
    ],
  },
];

const seed = randomSeed("CONSTANTS_SEED", 1);

describe(`layout of records (CONSTANTS_SEED=${seed})`, () => {
  const random = randomFrom(seed);
  const generated = Array.from({ length: 150 }, (_, index) => recordFrom(random, `r${index}`));

  test("hand-picked ones as avr-gcc lays them out", async () => {
    await compare(avrC, avrModel, handPicked);
  });

  test("generated ones as avr-gcc lays them out", async () => {
    await compare(avrC, avrModel, generated);
  });

  test("generated ones as gcc for 32 bits lays them out", async () => {
    await compare(ilp32C, ilp32Model, [...handPicked, ...generated]);
  });
});
