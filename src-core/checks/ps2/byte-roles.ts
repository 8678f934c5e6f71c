import type { SendSequence, SentByte } from "../../facts/ps2/ps2-facts.ts";
import { type Command, commandByCode } from "../../model/commands.ts";

/** What a byte is to the mouse that gets it. */
export type ByteRole =
  | { readonly kind: "command"; readonly byte: SentByte; readonly command: Command }
  | {
      readonly kind: "argument";
      readonly byte: SentByte;
      readonly of: Command;
      readonly commandByte: SentByte;
    }
  /** Where a command has to stand, and none that a mouse knows. */
  | { readonly kind: "no command"; readonly byte: SentByte }
  /** It may be a command or an argument, or it is not known. */
  | { readonly kind: "uncertain"; readonly byte: SentByte };

/** The command whose argument comes next; `unknown` where something was sent that is not known. */
type Pending = { readonly command: Command; readonly byte: SentByte } | "unknown" | undefined;

/** Each byte of a sequence with its role. */
export function byteRoles({ bytes }: SendSequence): ByteRole[] {
  let pending: Pending;
  let echoes = false;
  return bytes.map((byte) => {
    const before: Pending = byte.afterUnknown ? "unknown" : pending;
    const role = roleOf(byte, before, echoes);
    pending = pendingAfter(role);
    if (role.kind === "command") echoes = role.command.name === "set wrap mode";
    return role;
  });
}

function roleOf(byte: SentByte, pending: Pending, echoes: boolean): ByteRole {
  if (pending !== undefined && pending !== "unknown") {
    return { kind: "argument", byte, of: pending.command, commandByte: pending.byte };
  }
  if (byte.byte === undefined) return { kind: "uncertain", byte };
  const command = commandByCode(byte.byte);
  if (command !== undefined) return { kind: "command", byte, command };
  // In wrap mode the mouse echoes whatever it gets.
  return pending === "unknown" || echoes ? { kind: "uncertain", byte } : { kind: "no command", byte };
}

function pendingAfter(role: ByteRole): Pending {
  switch (role.kind) {
    case "command":
      return role.command.argument === "none" ? undefined : { command: role.command, byte: role.byte };
    case "uncertain":
      return role.byte.byte === undefined ? "unknown" : undefined;
    case "argument":
    case "no command":
      return undefined;
  }
}
