import { commandByCode } from "../../model/commands.ts";
import { acknowledge, selfTestPassed } from "../../model/replies.ts";
import type { Program } from "../../reader/program/program.ts";
import type { FunctionSymbol } from "../../reader/typed/nodes.ts";
import type { Type } from "../../reader/types/types.ts";
import type { CallEvent, EntryWalk, OutsideCall } from "../walk/events.ts";
import { eachOnce } from "../walk/in-order.ts";
import { integerOf } from "../walk/values.ts";
import type { PortPins } from "./port-pins.ts";
import type { Sender } from "./ps2-facts.ts";
import type { Request } from "./requests.ts";

/** Functions that send a byte to the mouse: those that do the request to send, or else those called as if. */
export function findSenders(
  walks: readonly EntryWalk[],
  requests: readonly Request[],
  pins: PortPins,
  program: Program,
): Sender[] {
  const found = new Map<FunctionSymbol, Sender>();
  for (const request of requests) {
    if (request.clock !== pins.clock?.pin) continue;
    if (pins.data !== undefined && request.data !== pins.data.pin) continue;
    const sender = senderOf(request);
    if (sender?.function !== undefined) found.set(sender.function, sender);
  }
  return found.size > 0 ? [...found.values()] : sendersByName(walks, program);
}

/** The innermost function around the whole request that is given a byte. */
function senderOf({ low, release, walk }: Request): Sender | undefined {
  const around = release.calls.filter((call) => low.calls.includes(call)).map((call) => call.function);
  for (const symbol of [walk.entry.function, ...around].reverse()) {
    const parameter = byteParameter(symbol);
    if (parameter !== undefined)
      return { name: symbol.name, function: symbol, parameter, by: "what it does" };
  }
  return undefined;
}

const byteNames =
  /^(b|c|d|v|x|byte|data|dat|value|val|cmd|command|code|octet|msg|tx|out)$|byte|data|cmd|command|value/i;

/** Which parameter is the byte: the only small integer, or the one that is called so. */
function byteParameter(symbol: FunctionSymbol): number | undefined {
  const candidates: number[] = [];
  for (const [index, type] of symbol.type.parameters.entries()) if (isByteLike(type)) candidates.push(index);
  if (candidates.length <= 1) return candidates[0];
  const named = candidates.filter((index) => byteNames.test(symbol.parameterNames[index] ?? ""));
  const eight = candidates.filter((index) => {
    const type = symbol.type.parameters[index];
    return type?.kind === "integer" && type.bits === 8;
  });
  return named[0] ?? eight[0] ?? candidates[0];
}

function isByteLike(type: Type): boolean {
  if (type.kind === "integer") return type.rank !== "bool" && type.bits <= 16;
  return type.kind === "enumeration";
}

/** `mouse.write(0xF4)`, `ps2_send(0xFF)`: the last word says that it sends, another that it is the mouse's side. */
const sendingWord =
  /(^|[._]|[a-z](?=[A-Z]))(write|send|transmit|tx|put|command|cmd)(_?(byte|command|cmd|data|char|host|mouse))*$/i;
const mouseWord = /ps_?2|mouse/i;
const otherSide = /serial|uart|usart|rs232|\bpc\b|usb|hid|print/i;

/**
 * Functions whose body is not in the project, by the names they are called by. Common practice, no source; so
 * only where the bytes they are given are a mouse's commands, and none a mouse's own reply.
 */
function sendersByName(walks: readonly EntryWalk[], program: Program): Sender[] {
  const calls = new Map<
    string,
    { readonly call: OutsideCall | CallEvent; readonly bytes: (number | undefined)[] }
  >();
  for (const { events } of walks) {
    for (const event of eachOnce(events)) {
      const name = event.kind === "outside-call" || event.kind === "call" ? nameOf(event) : undefined;
      if (name === undefined || (event.kind !== "outside-call" && event.kind !== "call")) continue;
      if (event.kind === "outside-call" && event.origin === "core") continue;
      if (
        !sendingWord.test(name) ||
        !mouseWord.test(context(name, event)) ||
        otherSide.test(context(name, event))
      )
        continue;
      const known = calls.get(name) ?? { call: event, bytes: [] };
      known.bytes.push(integerOf(event.arguments[parameterOf(event)]));
      calls.set(name, known);
    }
  }
  const senders: Sender[] = [];
  for (const [name, { call, bytes }] of calls) {
    if (!soundsLikeHost(bytes)) continue;
    if (call.kind === "call" && program.definitionOf(call.function) === undefined) continue;
    senders.push({ name, function: call.function, parameter: parameterOf(call), by: "its name" });
  }
  return senders;
}

function nameOf(event: OutsideCall | CallEvent): string {
  return event.kind === "call" ? event.function.name : event.name;
}

/** The name with the class of its object, where that is known. */
function context(name: string, event: OutsideCall | CallEvent): string {
  const owner = event.function?.memberOf?.name ?? "";
  const type = event.object?.kind === "address" ? event.object.place.type : undefined;
  const typeName = type?.kind === "unknown" ? type.name : type?.kind === "record" ? type.record.name : "";
  return `${typeName} ${owner} ${name}`;
}

function parameterOf(event: OutsideCall | CallEvent): number {
  if (event.function !== undefined) return byteParameter(event.function) ?? 0;
  const known = event.arguments.findIndex((value) => commandByCode(integerOf(value) ?? -1) !== undefined);
  return Math.max(0, known);
}

function soundsLikeHost(bytes: readonly (number | undefined)[]): boolean {
  const known = bytes.filter((byte) => byte !== undefined);
  if (known.some((byte) => byte === acknowledge.code || byte === selfTestPassed.code)) return false;
  return known.some((byte) => commandByCode(byte) !== undefined);
}

/** Whether the firmware calls `mouse.initialize()` besides `mouse.write(...)`; reading is no sending. */
export function sendsMore(walks: readonly EntryWalk[], senders: readonly Sender[]): boolean {
  const prefixes = senders.flatMap(({ name, by }) => (by === "its name" ? (/^.+[._]/.exec(name) ?? []) : []));
  const isAnother = (name: string): boolean =>
    prefixes.some((prefix) => name.startsWith(prefix)) &&
    senders.every((sender) => sender.name !== name) &&
    !/read|receive|available|get|take|poll/i.test(name);
  return walks.some(({ events }) =>
    eachOnce(events).some(
      (event) => event.kind === "outside-call" && event.origin !== "core" && isAnother(event.name),
    ),
  );
}
