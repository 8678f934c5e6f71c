import { codeOf } from "../model/commands.ts";
import type { ReportLayout } from "../model/layouts/layout.ts";
import type { BenchSide, Engine, EngineEnd } from "./engine.ts";
import type { MouseProfile } from "./mice/profile.ts";
import { VirtualMouse } from "./mice/virtual-mouse.ts";
import type { FirmwareWatch } from "./observing/firmware-watch.ts";
import { Pc } from "./pcs/pc.ts";
import type { PcProfile } from "./pcs/pc-profile.ts";
import { LayoutReceiver } from "./pcs/reports/layout-receiver.ts";
import type { Run, Whereabout } from "./run-record.ts";
import { type Stroke, strokeLength } from "./strokes/stroke.ts";
import { EventQueue } from "./time/event-queue.ts";
import { figure } from "./time/figures.ts";
import { ms, ns, second, type Time, us } from "./time/time.ts";
import { createWires, type Wires } from "./wires/wires.ts";

/** What a run is told of its firmware. */
type RunWatch = Pick<FirmwareWatch, "lastAt" | "observations" | "places">;

/** What stands on the bench beside the firmware. */
export interface BenchSetup {
  readonly mouse: MouseProfile;
  readonly pc: PcProfile;
  readonly stroke: Stroke;
  /** What the PC's driver expects. */
  readonly layout: ReportLayout;
  readonly baud: number;
  /** Counts of x and y out per count in that the author declares. */
  readonly scale: number;
  /** Any whole number: jitter and noise come from it. */
  readonly seed: number;
  /** Asked now and then; true ends the run where it is. */
  readonly isUnwanted?: ((now: Time) => boolean) | undefined;
}

/** A run of a firmware between a mouse and a PC, and how its code ended. */
export interface BenchRun {
  readonly run: Run;
  readonly end: EngineEnd;
  /** The stroke began; undefined where mouse and PC were never both ready. */
  readonly strokeBegan: Time | undefined;
}

/**
 * From the release of a line to the moment when it reads high: a pull-up of some kiloohms and the cable's capacitance.
 * Common practice, no source; the limit is the model's rise time.
 */
const riseTime = 300 * ns;
const readData = codeOf("read data");
const reset = codeOf("reset");
/** How often it is looked whether everybody is ready, or whether all is over. */
const lookEvery = 10 * ms;
/**
 * From look to look at where the code is when the mouse may answer: at first, and as a part of the time since the mouse was spoken to;
 * and how long behind the longest time for an answer what becomes of it is followed. Multiples of the golden ratio, without their whole
 * part, stretch the time up to twofold: a loop would be met at the same few places again and again otherwise.
 */
const firstFollow = 70 * us;
const followPart = 0.005;
const followBehind = 15 * ms;
const longestAnswer = figure("ps2.reply-timeout", "min");
const longestTest = figure("ps2.reset-wait", "min");
const goldenRatio = (1 + Math.sqrt(5)) / 2;
/** Mouse and PC have been ready for this long when the stroke begins. */
const settling = 100 * ms;
/** Who is not ready by now will not be: a slow mouse needs one second, a PC that asks twice some more. */
const longestStart = 8 * second;
/** A mouse that tested itself reports again by then. */
const longestRecovery = figure("ps2.recovery", "max");
/** Nothing has come over the line for this long: the stroke has arrived. */
const quiet = 300 * ms;
/** What the mouse said last and nothing came of is given so long: then the firmware stands still. */
const longestSilence = figure("ps2.reset-wait", "min") + settling;
/** An adapter that is still sending then floods the line. */
const longestDrain = 5 * second;

/** The bench with everything on it; `run` lets a firmware run between mouse and PC from power-up to the end of a stroke. */
export class Bench implements BenchSide {
  readonly wires: Wires;
  readonly #setup: BenchSetup;
  readonly #queue = new EventQueue();
  readonly #mouse: VirtualMouse;
  readonly #pc: Pc;
  readonly #receiver: LayoutReceiver;
  #readySince: Time | undefined;
  #strokeBegan: Time | undefined;
  /** The stroke, or its repetition, began for the last time. */
  #lastBegan: Time = 0;
  #hasRepeated = false;
  /** The mouse that went away in mid-stroke is back, and reports again. */
  #backSince: Time | undefined;
  #streamingSince: Time | undefined;
  /** The PC's line changed for the last time. */
  #lastSent: Time = 0;
  #ended = false;
  #watch: RunWatch | undefined;
  readonly #whereabouts: Whereabout[] = [];
  readonly #afterCommands: Whereabout[] = [];
  /** The mouse took a byte then, and where the code is since is followed. */
  #following: Time | undefined;

  constructor(setup: BenchSetup) {
    this.#setup = setup;
    const queue = this.#queue;
    this.wires = createWires(queue, riseTime);
    this.#mouse = new VirtualMouse(setup.mouse, queue, this.wires, setup.seed);
    this.#receiver = new LayoutReceiver(setup.layout);
    this.#pc = new Pc({
      queue,
      wires: this.wires,
      profile: setup.pc,
      layout: setup.layout,
      baud: setup.baud,
      receiver: this.#receiver,
    });
    this.wires.rxd.onEdge(({ time }) => {
      this.#lastSent = time;
    });
    this.#mouse.onReceived = () => this.#followCode();
    this.#mouse.powerOn();
    this.#look();
  }

  get next(): Time {
    return this.#queue.next;
  }

  get ended(): boolean {
    return this.#ended;
  }

  advanceTo(time: Time): void {
    if (!this.#ended) this.#queue.advanceTo(time);
  }

  /** `watch` sees what the engine's code does; without one nothing is observed. May be called once. */
  run(engine: Engine, watch?: RunWatch): BenchRun {
    this.#watch = watch;
    const end = engine.run(this);
    // Whoever stopped early leaves the others alone until the end.
    while (!this.#ended) this.advanceTo(this.next);
    const { layout, baud, scale } = this.#setup;
    const run: Run = {
      ended: this.#queue.now,
      edges: this.wires.edges,
      conflicts: [...this.wires.clock.conflicts, ...this.wires.data.conflicts].sort(
        (a, b) => a.time - b.time,
      ),
      mouse: this.#mouse.record,
      pc: { ...this.#pc.record, reports: this.#receiver.reports, discarded: this.#receiver.discarded },
      firmware: {
        observations: watch?.observations(this.#mouse.record.sent) ?? [],
        lastAt: watch?.lastAt,
        whereabouts: this.#whereabouts,
        afterCommands: this.#afterCommands,
        places: watch?.places,
      },
      wanted: { layout, baud, scale },
    };
    return { run, end, strokeBegan: this.#strokeBegan };
  }

  #look(): void {
    this.#queue.after(lookEvery, () => {
      if (this.#watch !== undefined)
        this.#whereabouts.push({ time: this.#queue.now, at: this.#watch.lastAt });
      if (this.#setup.isUnwanted?.(this.#queue.now) === true) this.#ended = true;
      else if (this.#strokeBegan === undefined) this.#perhapsBegin();
      else this.#perhapsEnd();
      if (!this.#ended) this.#look();
    });
  }

  /** The mouse took a byte: does the code wait for the answer? */
  #followCode(): void {
    if (this.#watch === undefined) return;
    const isFollowed = this.#following !== undefined;
    this.#following = this.#queue.now;
    if (!isFollowed) this.#follow(this.#watch, this.#following);
  }

  #follow(watch: RunWatch, since: Time): void {
    const { now } = this.#queue;
    const stretch = 1 + ((this.#afterCommands.length * goldenRatio) % 1);
    const step = Math.max(firstFollow, (now - since) * followPart);
    this.#queue.after(Math.round(step * stretch), () => {
      this.#afterCommands.push({ time: this.#queue.now, at: watch.lastAt });
      const last = this.#following ?? since;
      const longest = this.#mouse.record.received.at(-1)?.byte === reset ? longestTest : longestAnswer;
      if (this.#queue.now < last + longest + followBehind) this.#follow(watch, last);
      else this.#following = undefined;
    });
  }

  #perhapsBegin(): void {
    const { now } = this.#queue;
    const isReady = this.#pc.isListening && (this.#mouse.isStreaming || this.#isPolled);
    this.#readySince = isReady ? (this.#readySince ?? now) : undefined;
    if (this.#readySince !== undefined && now - this.#readySince >= settling) {
      this.#strokeBegan = now;
      this.#begin();
    } else if (now >= longestStart) {
      this.#ended = true;
    }
  }

  /** The firmware asks for each report: the mouse never streams, and hears nothing else. */
  get #isPolled(): boolean {
    return this.#mouse.record.received.at(-1)?.byte === readData;
  }

  #begin(): void {
    this.#lastBegan = this.#queue.now;
    this.#mouse.perform(this.#setup.stroke);
  }

  #perhapsEnd(): void {
    const { now } = this.#queue;
    const strokeEnd = this.#lastBegan + strokeLength(this.#setup.stroke);
    const isQuiet = now >= Math.max(strokeEnd + quiet, this.#lastSent + quiet, this.#silenceEnds);
    if (!isQuiet && now < strokeEnd + longestDrain) return;
    if (this.#mouse.hadIncident && !this.#hasRepeated) this.#perhapsRepeat();
    else this.#ended = true;
  }

  /**
   * A movement that came whole after the PC's line changed for the last time should have changed it, and a mouse that is kept
   * quiet has to be let speak.
   */
  get #silenceEnds(): Time {
    if (this.wires.clock.driveOf("firmware") === "low")
      return (this.wires.edges.at(-1)?.time ?? 0) + longestSilence;
    const { reports } = this.#mouse.record;
    const since = this.#lastSent;
    const said = reports.find(
      ({ sentAt, values }) => sentAt !== undefined && sentAt > since && (values.x !== 0 || values.y !== 0),
    );
    return said?.sentAt === undefined ? 0 : said.sentAt + longestSilence;
  }

  /**
   * A mouse that restarted or was unplugged moves once more when it reports again, so that it is seen whether the firmware hears
   * it. One that does not is given the time in which the firmware has to make it: it may be asked for each report.
   */
  #perhapsRepeat(): void {
    const { now } = this.#queue;
    if (this.#mouse.isAway) return;
    this.#backSince ??= now;
    this.#streamingSince = this.#mouse.isStreaming ? (this.#streamingSince ?? now) : undefined;
    const isReady = this.#streamingSince !== undefined && now - this.#streamingSince >= settling;
    if (!isReady && now - this.#backSince < longestRecovery + settling) return;
    this.#hasRepeated = true;
    this.#begin();
  }
}
