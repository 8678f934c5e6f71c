import { type Command, commandByCode, type ReplyPart } from "../../../model/commands.ts";
import { deviceIds, replyByCode, selfTestPassed } from "../../../model/replies.ts";
import { statusPacketBytes } from "../../../model/status-packet.ts";

/** What the mouse is to answer next. */
type Expected = Exclude<ReplyPart, "movement-report" | "last-packet">;

/** Says what the bytes of a conversation mean, each in the light of those before it; bytes of reports not among them. */
export class Conversation {
  #awaitsArgumentOf: Command | undefined;
  #expected: readonly Expected[] = [];

  /** A byte of the host; `sound` where the mouse took it. */
  ofHost(byte: number, sound: boolean): string {
    const asked = this.#awaitsArgumentOf;
    const command = asked === undefined ? commandByCode(byte) : undefined;
    if (sound) {
      this.#awaitsArgumentOf = command?.argument === "none" ? undefined : command;
      this.#expected = asked === undefined ? repliesOf(command) : ["acknowledge"];
    }
    if (asked !== undefined) return `argument of ${asked.name}: ${byte}`;
    return command?.name ?? "no command";
  }

  /** A byte of the mouse that belongs to no report; `whole` where the host let it end. */
  ofMouse(byte: number, whole: boolean): string {
    // A mouse that tested itself says so unasked.
    if (this.#expected.length === 0 && byte === selfTestPassed.code)
      this.#expected = ["self-test-passed", "id"];
    const [next, ...rest] = this.#expected;
    if (whole) this.#expected = rest;
    const reply = replyByCode(byte)?.name ?? "reply";
    if (next === "id") return `id: ${deviceIds.find(({ code }) => code === byte)?.meaning ?? "not known"}`;
    return next === "status-packet" ? "status" : reply;
  }
}

function repliesOf(command: Command | undefined): readonly Expected[] {
  return (command?.replies ?? []).flatMap((part): readonly Expected[] => {
    if (part === "movement-report" || part === "last-packet") return [];
    return part === "status-packet" ? Array.from({ length: statusPacketBytes }, () => part) : [part];
  });
}
