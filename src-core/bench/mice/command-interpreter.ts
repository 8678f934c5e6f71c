import { type Command, commandByCode, type ReplyPart } from "../../model/commands.ts";
import { type Knock, knockByRates } from "../../model/knocks.ts";
import { resolutions, sampleRates } from "../../model/mouse-settings.ts";
import { errorReply, resendRequest } from "../../model/replies.ts";
import { defaultSettings, type MouseSettings } from "./mouse-settings.ts";
import type { MouseProfile } from "./profile.ts";

/** What a byte from the host leads to. */
export type Answer =
  /** Nothing. */
  | { readonly kind: "none" }
  /** These bytes, after all that is still to be sent is dropped. */
  | { readonly kind: "bytes"; readonly bytes: readonly number[] }
  /** An acknowledge, then a part of its own. */
  | { readonly kind: "acknowledged"; readonly next: ReplyPart | undefined }
  /** The last transmission once more. */
  | { readonly kind: "resend" };

const none: Answer = { kind: "none" };
const acknowledged: Answer = { kind: "acknowledged", next: undefined };

/** What the mouse makes of bytes, whatever the wires do: its settings, and what it answers. */
export class CommandInterpreter {
  readonly #profile: MouseProfile;
  #settings: MouseSettings = defaultSettings();
  /** The command whose argument comes next. */
  #awaiting: Command | undefined;
  /** Sample rates that were set one right after the other. */
  #rates: number[] = [];
  #lastWasBad = false;

  constructor(profile: MouseProfile) {
    this.#profile = profile;
  }

  get settings(): Readonly<MouseSettings> {
    return this.#settings;
  }

  /** The argument of a command comes next. */
  get isAwaitingArgument(): boolean {
    return this.#awaiting !== undefined;
  }

  /** Forgets everything, as after a self-test. */
  reset(): void {
    this.#settings = defaultSettings();
    this.#awaiting = undefined;
    this.#rates = [];
    this.#lastWasBad = false;
  }

  /** A byte whose parity or stop bit was wrong. */
  takeFaulty(): Answer {
    return this.#refuse();
  }

  take(byte: number): Answer {
    const command = commandByCode(byte);
    if (this.#settings.wrapping && command?.name !== "reset wrap mode" && command?.name !== "reset") {
      this.#lastWasBad = false;
      return { kind: "bytes", bytes: [byte] };
    }
    // No document says what these two are in the place of an argument; they are taken as the commands that they are.
    if (this.#awaiting !== undefined && command?.name !== "resend" && command?.name !== "reset") {
      return this.#takeArgument(this.#awaiting, byte);
    }
    if (command === undefined) return this.#invalid();
    this.#lastWasBad = false;
    return this.#takeCommand(command);
  }

  #takeCommand(command: Command): Answer {
    if (command.name === "resend") return { kind: "resend" };
    if (command.name !== "set sample rate") this.#rates = [];
    this.#awaiting = command.argument === "none" ? undefined : command;
    const settings = this.#settings;
    switch (command.name) {
      case "reset":
        this.reset();
        break;
      case "set defaults":
        this.#settings = defaultSettings();
        break;
      case "disable reporting":
        settings.reporting = false;
        break;
      case "enable reporting":
        settings.reporting = true;
        break;
      case "set remote mode":
        settings.mode = "remote";
        break;
      case "set stream mode":
        settings.mode = "stream";
        break;
      case "set wrap mode":
        settings.wrapping = true;
        break;
      case "reset wrap mode":
        settings.wrapping = false;
        break;
      case "set scaling 2:1":
        settings.scaling = "2:1";
        break;
      case "set scaling 1:1":
        settings.scaling = "1:1";
        break;
    }
    return { kind: "acknowledged", next: command.replies[1] };
  }

  #takeArgument(command: Command, argument: number): Answer {
    if (command.name === "set sample rate") {
      if (!sampleRates.includes(argument)) return this.#invalid();
      this.#settings.sampleRate = argument;
      this.#listenForKnock(argument);
    } else {
      if (!resolutions.some((each) => each.code === argument)) return this.#invalid();
      this.#settings.resolution = argument;
    }
    this.#awaiting = undefined;
    this.#lastWasBad = false;
    return acknowledged;
  }

  #listenForKnock(rate: number): void {
    this.#rates = [...this.#rates, rate].slice(-3);
    const knock = knockByRates(this.#rates);
    if (knock !== undefined && this.#knows(knock)) this.#settings.id = knock.id;
  }

  #knows({ name }: Knock): boolean {
    const { id } = this.#settings;
    return this.#profile.knocks.some(
      (each) => each.name === name && (each.onlyWithId === undefined || each.onlyWithId === id),
    );
  }

  #invalid(): Answer {
    return this.#profile.invalidBytes === "ignored" ? none : this.#refuse();
  }

  /** The second bad byte in a row gets an error, and with it a command that waits for its argument is given up. */
  #refuse(): Answer {
    const reply = this.#lastWasBad ? errorReply : resendRequest;
    if (this.#lastWasBad) this.#awaiting = undefined;
    this.#lastWasBad = true;
    return { kind: "bytes", bytes: [reply.code] };
  }
}
