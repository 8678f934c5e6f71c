/** The id string of a Plug and Play serial device. Plug and Play External COM Device Specification, 3.1, Table 2. */
export interface PlugAndPlayId {
  /** Bytes before the begin mark, at most 16, such as M; none of 08, 09, 28, 29. */
  readonly otherId: readonly number[];
  /** 0 to 4095, in hundredths: 100 is version 1.00. */
  readonly revision: number;
  /** Three letters. */
  readonly maker: string;
  /** Four hex digits. */
  readonly product: string;
  readonly optional: OptionalFields | undefined;
}

/** A field that is left empty is shown by its extend mark. */
export interface OptionalFields {
  /** Eight characters or empty. */
  readonly serialNumber: string;
  /** At most 32 characters, such as MOUSE. */
  readonly className: string;
  /** At most 40 characters, separated by commas, such as PNP0F01. */
  readonly compatibleIds: string;
  /** At most 40 characters. */
  readonly userName: string;
}

/** Characters as they are, or less 20 hex so that bit 6 stays clear, as a mouse must send them (B.1). */
export type IdForm = "7-bit" | "6-bit";

const OFFSET: Readonly<Record<IdForm, number>> = { "7-bit": 0, "6-bit": 0x20 };
const BEGIN = 0x28;
const END = 0x29;
const EXTEND = 0x5c;

/** The marks that an id begins and ends with, in both forms. */
export const idMarks: readonly { readonly begin: number; readonly end: number }[] = [
  { begin: BEGIN, end: END },
  { begin: BEGIN - OFFSET["6-bit"], end: END - OFFSET["6-bit"] },
];

/** A field of the id string, as hovers describe it. Lengths in characters. */
export interface IdField {
  readonly name: string;
  readonly min: number;
  readonly max: number;
  readonly meaning: string;
}

export const idFields: readonly IdField[] = [
  { name: "other id", min: 0, max: 16, meaning: "M and the like; must not hold 08, 09, 28 or 29 hex" },
  { name: "begin mark", min: 1, max: 1, meaning: "( = 28 hex, or 08 in the 6-bit form" },
  {
    name: "revision",
    min: 2,
    max: 2,
    meaning: "two 6-bit halves, in hundredths; 01 24 hex is 1.00; never offset",
  },
  { name: "maker", min: 3, max: 3, meaning: "three letters" },
  { name: "product", min: 4, max: 4, meaning: "four hex digits" },
  { name: "serial number", min: 0, max: 9, meaning: "extend mark and eight characters" },
  { name: "class name", min: 0, max: 33, meaning: "extend mark and up to 32 characters, such as MOUSE" },
  { name: "compatible ids", min: 0, max: 41, meaning: "extend mark and ids separated by commas" },
  { name: "user name", min: 0, max: 41, meaning: "extend mark and free text" },
  { name: "checksum", min: 0, max: 2, meaning: "two hex digits; needed with any optional field" },
  { name: "end mark", min: 1, max: 1, meaning: ") = 29 hex, or 09 in the 6-bit form" },
];

/** The codes that go over the line. The checksum is there if any optional field is. */
export function encodePlugAndPlayId(id: PlugAndPlayId, form: IdForm): readonly number[] {
  const offset = OFFSET[form];
  const text = (characters: string): readonly number[] =>
    Array.from(characters, (character) => character.charCodeAt(0) - offset);
  const revision = [(id.revision >> 6) & 0x3f, id.revision & 0x3f];
  const head = [BEGIN - offset, ...revision, ...text(id.maker), ...text(id.product)];
  const end = END - offset;
  if (id.optional === undefined) return [...id.otherId, ...head, end];
  const body = [...head, ...optionalCodes(id.optional, offset, text)];
  return [...id.otherId, ...body, ...text(checksumDigits(sum([...body, end]))), end];
}

/** Extend marks of trailing empty fields are left out. */
function optionalCodes(
  { serialNumber, className, compatibleIds, userName }: OptionalFields,
  offset: number,
  text: (characters: string) => readonly number[],
): readonly number[] {
  const fields = [serialNumber, className, compatibleIds, userName];
  const last = fields.findLastIndex((field) => field !== "");
  return fields.slice(0, last + 1).flatMap((field) => [EXTEND - offset, ...text(field)]);
}

/**
 * The checksum of an id as it is transmitted: the sum modulo 256 of every code from begin mark to end mark, without
 * the two checksum codes before the end mark. Undefined where the marks are missing.
 */
export function plugAndPlayChecksum(codes: readonly number[]): number | undefined {
  const begin = codes.findIndex((code) => code === BEGIN || code === BEGIN - OFFSET["6-bit"]);
  if (begin < 0) return undefined;
  const endMark = codes[begin] === BEGIN ? END : END - OFFSET["6-bit"];
  const end = codes.indexOf(endMark, begin);
  if (end < begin + 3) return undefined;
  return sum([...codes.slice(begin, end - 2), endMark]);
}

/** Two upper-case hex digits. */
export function checksumDigits(checksum: number): string {
  return checksum.toString(16).toUpperCase().padStart(2, "0");
}

function sum(codes: readonly number[]): number {
  return codes.reduce((total, code) => (total + code) & 0xff, 0);
}
