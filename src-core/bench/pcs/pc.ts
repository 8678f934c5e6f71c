import type { ReportLayout } from "../../model/layouts/layout.ts";
import { quantity } from "../../model/quantities.ts";
import type { Event, EventQueue } from "../time/event-queue.ts";
import { never, type Time } from "../time/time.ts";
import type { Cause } from "../wires/edge.ts";
import type { Wires } from "../wires/wires.ts";
import { IdentificationReader } from "./identification-reader.ts";
import type { ControlLines, PcProfile, Question } from "./pc-profile.ts";
import type { Answer, PcRecord, Session } from "./pc-record.ts";
import type { ReportReceiver } from "./reports/report-receiver.ts";
import type { ReceivedByte } from "./uart/received-byte.ts";
import { UartReceiver } from "./uart/uart-receiver.ts";

const CAUSE: Cause = { party: "pc", at: undefined };

export interface PcParts {
  readonly queue: EventQueue;
  readonly wires: Pick<Wires, "rxd" | "rts" | "dtr">;
  readonly profile: PcProfile;
  /** What the PC's driver expects. */
  readonly layout: ReportLayout;
  /** In baud; what PCs expect of a serial mouse where left out. */
  readonly baud?: number;
  readonly receiver: ReportReceiver;
}

interface OpenAnswer {
  readonly asked: Time;
  readonly bytes: ReceivedByte[];
  ended: Time | undefined;
  outcome: Answer["outcome"];
}

interface OpenSession {
  readonly from: Time;
  to: Time | undefined;
}

/**
 * A PC at the serial line: turns its control lines on and off as its profile says, waits for the identification, and
 * hands bytes to the receiver from then on. Bytes with a framing error are dropped, as a port does that is told to
 * ignore them (termios(3), IGNPAR).
 */
export class Pc {
  readonly #parts: PcParts;
  readonly #bytes: ReceivedByte[] = [];
  readonly #answers: OpenAnswer[] = [];
  readonly #sessions: OpenSession[] = [];
  #question: Question | undefined;
  #reader: IdentificationReader;
  #patience: Event | undefined;
  #session: OpenSession | undefined;
  #hasAskedAgain = false;

  /** Starts to count its time at once. */
  constructor(parts: PcParts) {
    this.#parts = parts;
    const { queue, wires, layout, profile } = parts;
    this.#reader = new IdentificationReader(layout.name);
    const baud = parts.baud ?? quantity("serial.baud")?.typical ?? never;
    new UartReceiver(queue, wires.rxd, { baud, dataBits: layout.dataBits }, (byte) => this.#receive(byte));
    queue.after(profile.startsAfter, () => this.#step(profile.opening, 0, () => this.#ask(0)));
  }

  /** Grows while the bench runs. */
  get record(): PcRecord {
    return { bytes: this.#bytes, answers: this.#answers, sessions: this.#sessions satisfies Session[] };
  }

  /** It knows the mouse and takes reports. */
  get isListening(): boolean {
    return this.#session !== undefined;
  }

  #step(steps: Question["steps"], index: number, then: () => void): void {
    const step = steps[index];
    if (step === undefined) {
      then();
      return;
    }
    this.#set(step);
    this.#parts.queue.after(step.time, () => this.#step(steps, index + 1, then));
  }

  /** DTR before RTS, where both change at once. */
  #set({ dtr, rts }: ControlLines): void {
    const { wires } = this.#parts;
    wires.dtr.drive(dtr ? 0 : 1, CAUSE);
    wires.rts.drive(rts ? 0 : 1, CAUSE);
  }

  #ask(index: number): void {
    const { profile, layout, queue } = this.#parts;
    const question = profile.questions[index];
    if (question === undefined) {
      this.#set(profile.unanswered);
      return;
    }
    this.#step(question.steps, 0, () => {
      this.#question = question;
      this.#reader = new IdentificationReader(layout.name);
      const asked = queue.now;
      this.#answers.push({ asked, bytes: [], ended: undefined, outcome: "open" });
      this.#set(question.asking);
      this.#wait(question.firstCharacter, index);
      queue.after(question.whole, () => {
        if (this.#answers.at(-1)?.asked === asked) this.#endQuestion(index);
      });
    });
  }

  #wait(time: Time, index: number): void {
    if (this.#patience !== undefined) this.#patience.cancelled = true;
    this.#patience = this.#parts.queue.after(time, () => this.#endQuestion(index));
  }

  #receive(byte: ReceivedByte): void {
    this.#bytes.push(byte);
    if (byte.fault !== undefined) return;
    const answer = this.#answers.at(-1);
    if (this.#question !== undefined && answer !== undefined) this.#answer(this.#question, answer, byte);
    else if (this.#session !== undefined) this.#take(this.#session, byte);
  }

  #answer(question: Question, answer: OpenAnswer, byte: ReceivedByte): void {
    answer.bytes.push(byte);
    this.#reader.take(byte.value);
    const index = this.#parts.profile.questions.indexOf(question);
    if (question.reads === "whole" ? this.#reader.isWhole : this.#reader.isUsual) this.#endQuestion(index);
    else this.#wait(question.nextCharacter, index);
  }

  #endQuestion(index: number): void {
    const answer = this.#answers.at(-1);
    if (this.#question === undefined || answer === undefined) return;
    this.#question = undefined;
    if (this.#patience !== undefined) this.#patience.cancelled = true;
    answer.ended = this.#parts.queue.now;
    if (this.#reader.isRight) {
      answer.outcome = "identified";
      this.#listen();
    } else {
      answer.outcome = answer.bytes.length === 0 ? "silent" : "wrong";
      this.#ask(index + 1);
    }
  }

  #listen(): void {
    this.#session = { from: this.#parts.queue.now, to: undefined };
    this.#sessions.push(this.#session);
  }

  #take(session: OpenSession, byte: ReceivedByte): void {
    const { queue, profile, receiver } = this.#parts;
    receiver.receive(byte);
    if (profile.asksAgainAfter === undefined || this.#hasAskedAgain) return;
    this.#hasAskedAgain = true;
    queue.after(profile.asksAgainAfter, () => {
      session.to = queue.now;
      this.#session = undefined;
      receiver.reset(queue.now);
      this.#ask(0);
    });
  }
}
