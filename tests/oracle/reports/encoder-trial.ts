import { bitTables, fieldsOf, readByTable } from "./bit-tables.ts";
import type { Call, Chip } from "./chip.ts";
import type { NotedField, NotedFunction } from "./noted-function.ts";

/** Where a report is not what the tables say of the values that went in. */
export interface Departure {
  readonly kind: "length" | "constant" | "button" | "overflow" | "movement";
  /** Field of the layout, or what is wrong where it is no field's. */
  readonly of: string;
  /** What went in, in the layout's sense; of a button 1 for down. */
  readonly asked: number;
  /** What a receiver gets. */
  readonly got: number;
  /** Another movement that stands for what was asked: as it is, or the end of the range. */
  readonly isLong: boolean;
}

/** Values of all fields, movements in the layout's sense. */
type Values = ReadonlyMap<string, number>;

const layoutsOfNineBits: readonly string[] = ["ps2-standard", "ps2-wheel", "ps2-five-button"];

/** Calls the encoder with many values, and compares each report with the tables. */
export function tryEncoder(subject: NotedFunction, chip: Chip): readonly Departure[] {
  const departures: Departure[] = [];
  for (const values of inputs(subject)) {
    const { found, read } = judge(subject, send(subject, chip, values), values);
    departures.push(...found, ...flush(subject, chip, values, read));
  }
  return departures;
}

function send(subject: NotedFunction, chip: Chip, values: Values): readonly number[] | "gap" {
  const inputs = subject.fields.map(({ field, negated }) => (values.get(field) ?? 0) * (negated ? -1 : 1));
  return bytesOf(subject, chip.call(inputs));
}

/** The report of a call: as many bytes as it says, else as it wrote, else what it sent. */
function bytesOf({ returns }: NotedFunction, call: Call): readonly number[] | "gap" {
  if (call.writtenCount === 0) return call.sent;
  const length = returns === "void" ? call.writtenCount : call.returned;
  return call.written.length < length ? "gap" : call.written.slice(0, length);
}

interface Judgement {
  readonly found: readonly Departure[];
  readonly read: ReadonlyMap<string, number>;
}

function judge(
  subject: NotedFunction,
  bytes: readonly number[] | "gap",
  values: Values,
  movementsCount = true,
): Judgement {
  const { layout, fields } = subject;
  const { rows, lastIsOptional } = bitTables[layout];
  const mayBeShort = lastIsOptional && values.get("middle") !== 1;
  const lengthIsRight = bytes.length === rows.length || (mayBeShort && bytes.length === rows.length - 1);
  if (bytes === "gap" || !lengthIsRight) {
    const got = bytes === "gap" ? -1 : bytes.length;
    const found = { kind: "length", of: "bytes", asked: rows.length, got, isLong: false } as const;
    return { found: [found], read: new Map() };
  }
  const reading = readByTable(layout, bytes);
  const found: Departure[] = reading.wrongConstants.map((of) => ({
    ...{ kind: "constant", of, asked: 0, got: 0, isLong: false },
  }));
  for (const [button, down] of reading.buttons) {
    const asked = values.get(button) ?? 0;
    if (down !== (asked === 1)) {
      found.push({ kind: "button", of: button, asked, got: down ? 1 : 0, isLong: false });
    }
  }
  for (const [field, got] of reading.movements) {
    const asked = fields.some((each) => each.field === field) ? (values.get(field) ?? 0) : 0;
    const isLong = !fits(subject, field, asked);
    if (reading.overflow.has(field) && !isLong) {
      found.push({ kind: "overflow", of: field, asked, got, isLong });
    }
    if (movementsCount && !standsFor(subject, field, asked, got)) {
      found.push({ kind: "movement", of: field, asked, got, isLong });
    }
  }
  return { found, read: reading.movements };
}

function ends({ layout }: NotedFunction, field: string): readonly number[] {
  return bitTables[layout].ends[field] ?? [];
}

/** Whether every text has room for it. */
function fits(subject: NotedFunction, field: string, value: number): boolean {
  const found = ends(subject, field);
  const nearest = value < 0 ? found.filter((end) => end < 0).map(Math.abs) : found.filter((end) => end > 0);
  return Math.abs(value) <= Math.min(...nearest);
}

/** The movement itself, or a shorter one that is the end of a range. */
function standsFor(subject: NotedFunction, field: string, asked: number, got: number): boolean {
  const isEnd = ends(subject, field).includes(got);
  return got === asked || (isEnd && got * asked > 0 && Math.abs(got) < Math.abs(asked));
}

const longestFlush = 900;

/**
 * Calls on with nothing new until a report says nothing: what a longer movement left behind comes in these reports
 * wholly or not at all.
 */
function flush(subject: NotedFunction, chip: Chip, values: Values, read: Values): readonly Departure[] {
  const found: Departure[] = [];
  const totals = new Map<string, number>();
  const nothing: Values = new Map();
  let isOver = false;
  for (let count = 0; !isOver && count < longestFlush; count += 1) {
    const judgement = judge(subject, send(subject, chip, nothing), nothing, false);
    found.push(...judgement.found);
    const moved = [...judgement.read].filter(([, value]) => value !== 0);
    for (const [field, value] of moved) totals.set(field, (totals.get(field) ?? 0) + value);
    isOver = moved.length === 0;
  }
  for (const [field, total] of totals) {
    const asked = values.get(field) ?? 0;
    const got = (read.get(field) ?? 0) + total;
    if (!isOver || (total !== 0 && got !== asked)) {
      found.push({ kind: "movement", of: field, asked, got, isLong: !fits(subject, field, asked) });
    }
  }
  return found;
}

const lengths = [300, 511, 512, 1000, 4096, 20_000, 32_767];
const longLengths = [32_768, 65_535, 65_536, 65_600, 100_000];
const small = Array.from({ length: 521 }, (_, index) => index - 260);
const movementValues = [...small, ...[...lengths, ...longLengths].flatMap((each) => [each, -each])];

/** Without a common factor, so that the values meet in many pairs. */
const strides = [37, 101, 7];

/** Each movement alone, pairs of movements, and all states of the buttons. */
function* inputs(subject: NotedFunction): Generator<Values> {
  const named = subject.fields.map(({ field }) => field);
  const movements = fieldsOf(subject.layout).movements.filter((field) => named.includes(field));
  const buttons = fieldsOf(subject.layout).buttons.filter((field) => named.includes(field));
  const allowed = new Map(movements.map((field) => [field, allowedValues(subject, field)]));
  for (const [field, values] of allowed) for (const value of values) yield new Map([[field, value]]);
  for (let state = 0; state < 2 ** buttons.length; state += 1) yield pressed(buttons, state);
  for (let step = 0; step < 200; step += 1) {
    const entries = [...allowed].map(([field, values], index) => {
      return [field, values[(step * (strides[index] ?? 1)) % values.length] ?? 0] as const;
    });
    yield new Map([...entries, ...pressed(buttons, step)]);
  }
}

/** The buttons, down where the number has a 1. */
function pressed(buttons: readonly string[], state: number): Values {
  return new Map(buttons.map((button, index) => [button, (state >> index) & 1]));
}

/** Values in the layout's sense that the operand's type holds. */
function allowedValues(subject: NotedFunction, field: string): readonly number[] {
  const operand = subject.fields.find((each) => each.field === field);
  if (operand === undefined) return [];
  const most = 2 ** (widthOf(subject, operand) - 1);
  // A longer turn of the wheel takes thousands of reports to bring what is left.
  const longest = field === "wheel" ? 1000 : Number.POSITIVE_INFINITY;
  return movementValues.filter((value) => {
    if (Math.abs(value) > longest) return false;
    const given = operand.negated ? -value : value;
    return given < most && given >= -most && !hasNoOpposite(subject, operand, given, most);
  });
}

/**
 * -128 of an eight-bit operand that is turned over: its opposite has no place in a field of eight bits, and
 * callers that clip to 127 never ask for it. Nine bits have room for it.
 */
function hasNoOpposite(
  { layout }: NotedFunction,
  { negated, field }: NotedField,
  given: number,
  most: number,
): boolean {
  const hasRoom = layoutsOfNineBits.includes(layout) && field !== "wheel" && most === 128;
  return negated && given === -most && !hasRoom;
}

const widths: Readonly<Record<string, number>> = {
  ...{ int8_t: 8, uint8_t: 8, byte: 8, char: 8, int16_t: 16, int: 16, long: 32 },
};

/** Bits of an operand's type: the parameter's, or that of the first declaration of the name. */
function widthOf({ parameters, text }: NotedFunction, { path }: NotedField): number {
  const name = path.split(".").at(-1) ?? "";
  const parameter = parameters.find((each) => each.name === path);
  const pattern = new RegExp(`(\\w+) (?:\\w+(?: = 0)?, )*${name}\\b[^;()]*;`);
  const type = parameter?.type ?? pattern.exec(text)?.[1] ?? "";
  const width = widths[type.split(" ").at(-1) ?? ""];
  if (width === undefined) throw new Error(`no width is known of ${path}, ${type}`);
  return width;
}
