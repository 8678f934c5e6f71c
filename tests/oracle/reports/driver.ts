import type { SourceProgram } from "../interpreter/source-program.ts";
import type { NotedField, NotedFunction, Parameter } from "./noted-function.ts";

/**
 * A snippet with a program around it that calls its function again and again. It reads values and bytes from
 * GPIOR0, tells in GPIOR1 where it is, and hands results over in GPIOR2; see chip.ts.
 */
export const places = { ready: 1, before: 2, after: 3, done: 4 } as const;
/** Room for a report in an array that the function is handed: more than any layout has. */
const roomBytes = 8;

const helpers = `
#include <avr/io.h>
#include <stdint.h>
#include <string.h>
uint8_t driver_bytes[${roomBytes}];
static uint8_t driver_byte(void) { return GPIOR0; }
static long driver_value(void) {
  unsigned long value = 0;
  for (uint8_t i = 0; i < 4; i++) value |= (unsigned long)driver_byte() << (8 * i);
  return (long)value;
}
static void driver_tell(long value) {
  for (uint8_t i = 0; i < 4; i++) GPIOR2 = (unsigned long)value >> (8 * i);
}
`;

export function withDriver(subject: NotedFunction): SourceProgram {
  const body = subject.directive === "encodes" ? encoderBody(subject) : decoderBody(subject);
  const parts = [subject.text, helpers, ...sendFunction(subject), ...objects(subject)];
  const start = subject.language === "sketch" ? "void loop() {}\nvoid setup() {" : "int main(void) {";
  const text = `${parts.join("\n")}\n${start}\n${body.map((line) => `  ${line}\n`).join("")}}\n`;
  return { language: subject.language, text, headers: {} };
}

/** Sends straight to the port where the snippet only declares a function for it. */
function sendFunction({ text, bytes }: NotedFunction): string[] {
  const declared = new RegExp(`^(?:extern )?(void ${bytes}\\(uint8_t \\w+\\));`, "m").exec(text);
  return declared === null ? [] : [`void ${bytes}(uint8_t byte) { UDR0 = byte; }`];
}

/** What the function's parameters are called with, and the object that it is a method of. */
function objects({ parameters, className, bytes }: NotedFunction): string[] {
  const variables = parameters
    .filter(({ name }) => name !== bytes)
    .map(({ name, type }) => `${type} argument_${name};`);
  return className === undefined ? variables : [...variables, `${className} object;`];
}

function encoderBody(subject: NotedFunction): string[] {
  const { fields, returns } = subject;
  const array = bytesOf(subject);
  const targets = fields.map((field) => expression(subject, field.path));
  const result = returns === "void" ? "" : "long result = ";
  return [
    ...(array === undefined
      ? []
      : [`driver_tell((long)(uint16_t)&${array}[0]);`, `driver_tell(sizeof ${array});`]),
    `GPIOR1 = ${places.ready};`,
    "for (;;) {",
    ...[...new Set(targets)].map((target) => `  ${target} = 0;`),
    ...fields.map(({ bit }, index) => {
      const target = targets[index] ?? "";
      return bit === undefined ? `  ${target} = driver_value();` : `  ${target} |= driver_value() << ${bit};`;
    }),
    `  GPIOR1 = ${places.before};`,
    `  ${result}${call(subject)};`,
    '  __asm__ volatile("" ::: "memory");',
    `  GPIOR1 = ${places.after};`,
    `  driver_tell(${returns === "void" ? "0" : "result"});`,
    `  GPIOR1 = ${places.done};`,
    "}",
  ];
}

function decoderBody(subject: NotedFunction): string[] {
  const array = bytesOf(subject) ?? "";
  const targets = subject.fields.map(({ path }) => expression(subject, path));
  return [
    `GPIOR1 = ${places.ready};`,
    "for (;;) {",
    // So that it shows when an output is not written.
    ...[...new Set(targets)].map((target) => `  ${target} = 0x55;`),
    `  uint8_t count = driver_value();`,
    `  for (uint8_t i = 0; i < count; i++) ${array}[i] = driver_value();`,
    `  GPIOR1 = ${places.before};`,
    `  ${call(subject)};`,
    '  __asm__ volatile("" ::: "memory");',
    `  GPIOR1 = ${places.after};`,
    ...subject.fields.map(({ bit }, index) => {
      const target = targets[index] ?? "";
      return `  driver_tell(${bit === undefined ? target : `${target} >> ${bit} & 1`});`;
    }),
    `  GPIOR1 = ${places.done};`,
    "}",
  ];
}

function call({ name, parameters, className, bytes }: NotedFunction): string {
  const values = parameters.map((parameter) => argument(parameter, bytes));
  return `${className === undefined ? "" : "object."}${name}(${values.join(", ")})`;
}

function argument({ name, type, kind }: Parameter, bytes: string): string {
  if (name === bytes) {
    if (kind !== "array-reference") return "driver_bytes";
    const [element = "", bounds = ""] = type.split("[");
    return `*(${element} (*)[${bounds})driver_bytes`;
  }
  return `${kind === "pointer" ? "&" : ""}argument_${name}`;
}

/** The array of a report's bytes; undefined where a function is called with them. */
function bytesOf(subject: NotedFunction): string | undefined {
  const { bytes, parameters, text } = subject;
  if (parameters.some(({ name }) => name === bytes)) return "driver_bytes";
  if (new RegExp(`^(?:static |extern )*void ${bytes}\\(`, "m").test(text)) return undefined;
  return expression(subject, bytes);
}

/** How the driver writes what a note names: a parameter, a global or else a member. */
function expression({ parameters, text, className }: NotedFunction, path: NotedField["path"]): string {
  const [root = ""] = path.split(".");
  if (parameters.some(({ name }) => name === root)) return `argument_${path}`;
  const isGlobal = new RegExp(`^(?!\\s|return)[^()\\n]*\\b${root}\\b[^()\\n]*;$`, "m").test(text);
  return className === undefined || isGlobal ? path : `object.${path}`;
}
