import type { ReplyPart } from "../../model/commands.ts";
import { acknowledge, resendRequest, selfTestPassed } from "../../model/replies.ts";
import { encodeStatus } from "../../model/status-packet.ts";
import { Random } from "../../random.ts";
import { Hand } from "../strokes/hand.ts";
import type { Stroke } from "../strokes/stroke.ts";
import type { Event, EventQueue } from "../time/event-queue.ts";
import { second, type Time } from "../time/time.ts";
import type { Wires } from "../wires/wires.ts";
import { type Answer, CommandInterpreter } from "./command-interpreter.ts";
import { type LineOwner, MouseLine, type OutgoingByte } from "./line/mouse-line.ts";
import { MousePins } from "./line/mouse-pins.ts";
import { layoutOfId } from "./mouse-settings.ts";
import { Movement } from "./movement.ts";
import { Outbox } from "./outbox.ts";
import type { MouseProfile } from "./profile.ts";
import type { Happening, MouseRecord, MouseReport, ReceivedFrame, SentFrame } from "./record.ts";

/**
 * A mouse on the PS/2 wires of the bench: one state machine for all mice, told by its profile what it does differently.
 * It acts only through the event queue and the wires, and the same seed gives the same run.
 */
export class VirtualMouse implements LineOwner {
  readonly profile: MouseProfile;
  /** Called when a byte of the host came, whole or not. */
  onReceived: () => void = () => {};
  readonly #queue: EventQueue;
  readonly #pins: MousePins;
  readonly #line: MouseLine;
  readonly #commands: CommandInterpreter;
  readonly #outbox: Outbox;
  readonly #hand = new Hand();
  readonly #movement: Movement;
  readonly #sent: SentFrame[] = [];
  readonly #received: ReceivedFrame[] = [];
  readonly #reports: MouseReport[] = [];
  readonly #happenings: Happening[] = [];
  /** The end of the power-on reset, of the self-test, or of being away. */
  #waiting: Event | undefined;
  #sampling: Event | undefined;
  /** The counters are read at whole sample periods from here. */
  #sampledAt: Time = 0;
  #wholeReports = 0;
  #soundBytes = 0;
  #hadIncident = false;

  /** `seed` is any whole number: what the profile leaves to chance comes from it. */
  constructor(profile: MouseProfile, queue: EventQueue, wires: Pick<Wires, "clock" | "data">, seed: number) {
    this.profile = profile;
    this.#queue = queue;
    this.#pins = new MousePins(queue, wires.clock, wires.data, profile.timing, new Random(seed));
    this.#line = new MouseLine(this.#pins, this);
    this.#commands = new CommandInterpreter(profile);
    this.#outbox = new Outbox(profile.disturbedByteEvery);
    this.#movement = new Movement(this.#hand, profile.buttons);
  }

  get record(): MouseRecord {
    return {
      sent: this.#sent,
      received: this.#received,
      reports: this.#reports,
      happenings: this.#happenings,
    };
  }

  /** The mouse sends reports by itself whenever it moves. */
  get isStreaming(): boolean {
    const { mode, reporting, wrapping } = this.#commands.settings;
    const isOn = !this.isAway && mode === "stream" && reporting && !wrapping;
    return isOn && !this.#commands.isAwaitingArgument;
  }

  /** What happens to the mouse once has happened: it restarted, or was unplugged. */
  get hadIncident(): boolean {
    return this.#hadIncident;
  }

  /** It has no power, comes up or tests itself. */
  get isAway(): boolean {
    return this.#waiting !== undefined;
  }

  /** The mouse gets power: it comes up, tests itself and announces itself. */
  powerOn(): void {
    this.#happenings.push({ kind: "powered", time: this.#queue.now });
    if (this.profile.bus === "ps2") this.#pins.pullUps(true);
    const { powerOnReset } = this.profile.timing;
    this.#waiting = this.#queue.after(this.#pins.draw(powerOnReset), () => {
      if (this.profile.bus === "ps2" || this.#choosesPs2()) this.#testItself("power-on");
    });
  }

  /** The hand begins a stroke now. */
  perform(stroke: Stroke): void {
    this.#hand.perform(stroke, this.#queue.now);
    this.#planSample();
  }

  outgoing(): OutgoingByte | undefined {
    return this.#outbox.outgoing();
  }

  sent(frame: SentFrame): void {
    this.#sent.push(frame);
    const { whole, bytesBefore } = this.#outbox.sent(frame.whole);
    if (whole?.report !== undefined) {
      const { of } = whole.report;
      if (of.sentAt === undefined) this.#wholeReports += 1;
      of.sentAt ??= frame.end;
      of.readableAt ??= frame.readableAt;
      this.#movement.tell(of);
    }
    if (whole?.thenSelfTest === true) this.#testItself("reset-command");
    else if (frame.report !== undefined && bytesBefore === 1) this.#perhapsIncident();
  }

  received(frame: ReceivedFrame): void {
    this.#received.push(frame);
    this.onReceived();
    if (frame.fault === "cut-off") return;
    const earliest = frame.released + this.#pins.draw(this.profile.timing.response);
    if (frame.fault === "none" && this.#asksAgain()) {
      this.#reply([resendRequest.code], earliest);
    } else {
      this.#answer(
        frame.fault === "none" ? this.#commands.take(frame.byte) : this.#commands.takeFaulty(),
        earliest,
      );
    }
    this.#sampledAt = this.#queue.now;
    this.#planSample();
  }

  requestUnnoticed(hold: Time): void {
    this.#happenings.push({ kind: "request-unnoticed", time: this.#queue.now, hold });
  }

  #answer(answer: Answer, earliest: Time): void {
    switch (answer.kind) {
      case "none":
        break;
      case "resend":
        this.#outbox.repeat(earliest);
        break;
      case "bytes":
        this.#outbox.drop();
        this.#reply(answer.bytes, earliest);
        break;
      case "acknowledged":
        this.#outbox.drop();
        this.#movement.setResolution(this.#commands.settings.resolution);
        this.#acknowledge(answer.next, earliest);
    }
  }

  #acknowledge(next: ReplyPart | undefined, earliest: Time): void {
    const report = next === "movement-report" ? this.#takeReport("1:1") : undefined;
    this.#clearCounters();
    this.#reply([acknowledge.code], earliest, next === "self-test-passed");
    if (report !== undefined) this.#addReport(report, earliest);
    else if (next === "id") this.#reply([this.#commands.settings.id], earliest);
    else if (next === "status-packet") this.#reply(this.#status(), earliest);
  }

  #reply(bytes: readonly number[], notBefore: Time, thenSelfTest = false): void {
    this.#outbox.add({ bytes, notBefore, report: undefined, thenSelfTest });
  }

  #status(): readonly number[] {
    const { mode, ...settings } = this.#commands.settings;
    const movement = this.#movement;
    return encodeStatus({
      ...settings,
      remote: mode === "remote",
      left: movement.isDown("left"),
      middle: movement.isDown("middle"),
      right: movement.isDown("right"),
    });
  }

  #asksAgain(): boolean {
    const every = this.profile.resendRequestEvery;
    this.#soundBytes += 1;
    return every > 0 && this.#soundBytes % every === 0;
  }

  #clearCounters(): void {
    const counts = this.#movement.clear(this.#queue.now);
    if (counts.x === 0 && counts.y === 0 && counts.wheel === 0) return;
    this.#happenings.push({ kind: "counters-cleared", time: this.#queue.now, counts });
  }

  #choosesPs2(): boolean {
    const { clock, data } = this.#pins;
    const isPs2 = [clock, data].every((wire) => wire.level === 1 && wire.isPulledUpBut("mouse"));
    this.#happenings.push({ kind: isPs2 ? "chose-ps2" : "chose-usb", time: this.#queue.now });
    if (isPs2) this.#pins.pullUps(true);
    return isPs2;
  }

  #testItself(because: "power-on" | "reset-command" | "own-restart"): void {
    const length = this.#pins.draw(this.profile.timing.selfTest);
    this.#happenings.push({ kind: "self-test", time: this.#queue.now, length, because });
    this.#line.ignore("deaf");
    this.#forget();
    this.#waiting = this.#queue.after(length, () => {
      this.#waiting = undefined;
      this.#clearCounters();
      this.#reply([selfTestPassed.code, this.#commands.settings.id], this.#queue.now);
      this.#line.listen();
    });
  }

  #forget(): void {
    if (this.#sampling !== undefined) this.#sampling.cancelled = true;
    this.#outbox.forget();
    this.#commands.reset();
    this.#clearCounters();
    this.#movement.setResolution(this.#commands.settings.resolution);
    this.#movement.forgetButtons();
  }

  #perhapsIncident(): void {
    const { incident } = this.profile;
    if (incident === undefined || this.#hadIncident || this.#wholeReports < incident.afterReports) return;
    this.#hadIncident = true;
    if (incident.kind === "restart") {
      this.#testItself("own-restart");
      return;
    }
    this.#happenings.push({ kind: "unplugged", time: this.#queue.now });
    this.#line.ignore("off");
    this.#pins.pullUps(false);
    this.#forget();
    this.#waiting = this.#queue.after(incident.away, () => this.powerOn());
  }

  /** Reads the counters at the next sample period in which the hand may have done something. */
  #planSample(): void {
    if (this.#sampling !== undefined) this.#sampling.cancelled = true;
    this.#sampling = undefined;
    if (!this.isStreaming) return;
    const { now } = this.#queue;
    const layout = layoutOfId(this.#commands.settings.id);
    const change = this.#movement.hasNews(layout, now) ? now : this.#hand.nextChange(now);
    if (!Number.isFinite(change)) return;
    const period = Math.round(second / this.#commands.settings.sampleRate);
    const from = this.#sampledAt;
    const periods = Math.max(1, Math.ceil((change - from) / period));
    this.#sampling = this.#queue.at(from + periods * period, this.#sample);
  }

  readonly #sample = (): void => {
    this.#sampling = undefined;
    const { now } = this.#queue;
    this.#sampledAt = now;
    const { settings } = this.#commands;
    // A report that the host did not let through yet has to go first; the counters count on.
    if (!this.#outbox.holdsReport && this.#movement.hasNews(layoutOfId(settings.id), now)) {
      const report = this.#takeReport(settings.scaling);
      this.#addReport(report, this.#isGlitchDue() ? this.#glitch() : now);
      this.#line.wake();
    }
    this.#planSample();
  };

  #takeReport(scaling: "1:1" | "2:1"): MouseReport {
    return this.#movement.takeReport(layoutOfId(this.#commands.settings.id), scaling, this.#queue.now);
  }

  #addReport(report: MouseReport, notBefore: Time): void {
    const index = this.#reports.push(report) - 1;
    this.#outbox.add({ bytes: report.bytes, notBefore, report: { of: report, index }, thenSelfTest: false });
  }

  #isGlitchDue(): boolean {
    const { glitch } = this.profile;
    return glitch !== undefined && (this.#reports.length + 1) % glitch.everyReports === 0;
  }

  /** A short pulse on a bus at rest; gives the moment of the report behind it. */
  #glitch(): Time {
    const { now } = this.#queue;
    const { glitch } = this.profile;
    const { clock, data } = this.#pins;
    if (glitch === undefined || !this.#line.isListening || clock.level === 0 || data.level === 0) return now;
    this.#happenings.push({ kind: "glitch", time: now });
    this.#pins.pullClock();
    this.#queue.after(glitch.width, () => this.#pins.releaseClock());
    return now + glitch.ahead;
  }
}
