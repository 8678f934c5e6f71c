import type { EventQueue } from "../../../../src-core/bench/time/event-queue.ts";
import type { Wires } from "../../../../src-core/bench/wires/wires.ts";
import type { DatasheetHost, HeardByte } from "../mice/datasheet-host.ts";
import { send } from "../pcs/sender.ts";
import { place } from "./place.ts";

const MS = 1e9;

/** What the adapter does wrong; nothing where all is left out. */
export interface AdapterFaults {
  /** One bit on the serial line, in us. */
  readonly bitUs?: number;
  readonly identificationMs?: number;
  readonly identification?: readonly number[];
  /** Answers RTS the first time only. */
  readonly answersOnce?: boolean;
  /** Takes bytes with wrong parity for right ones. */
  readonly ignoresParity?: boolean;
  /** Puts the bytes of reports together as they come, whatever came between. */
  readonly neverResynchronises?: boolean;
  /** Forgets one in so many movements. */
  readonly forgetsEvery?: number;
  readonly losesShortClicks?: boolean;
  readonly turnsYOver?: boolean;
  readonly doesNotClip?: boolean;
  /** Sends each movement by itself instead of summing up what waits. */
  readonly queuesAll?: boolean;
  readonly floods?: boolean;
  readonly neverEnables?: boolean;
  readonly ignoresRestart?: boolean;
  readonly ignoresRefusal?: boolean;
  readonly holdUs?: number;
  readonly wrongParity?: boolean;
  /** Stops for good at this moment, in ms. */
  readonly stopsAtMs?: number;
}

interface Motion {
  x: number;
  y: number;
  readonly left: boolean;
  readonly right: boolean;
}

export const serialPlace = place(100, "send");

/**
 * An adapter on paper: what the documents ask of a firmware, as events instead of code. Serial reports are those of
 * mouse(4), three bytes of seven bits at 1200 bit/s; the PS/2 side is the host of the article.
 */
export class PaperAdapter {
  readonly #queue: EventQueue;
  readonly #wires: Wires;
  readonly #host: DatasheetHost;
  readonly #faults: AdapterFaults;
  #read = 0;
  #state: "waiting" | "enabling" | "streaming" = "waiting";
  #packet: number[] = [];
  #lastByte = 0;
  #motions: Motion[] = [];
  #moved = 0;
  #last = { left: false, right: false };
  #lineFreeAt = 0;
  #identifyAt: number | undefined;
  #identified = 0;
  #isWanted = false;

  constructor(queue: EventQueue, wires: Wires, host: DatasheetHost, faults: AdapterFaults) {
    this.#queue = queue;
    this.#wires = wires;
    this.#host = host;
    this.#faults = faults;
    wires.rts.onEdge(({ level, time }) => {
      this.#isWanted = false;
      this.#identifyAt = level === 0 ? time + (faults.identificationMs ?? 14) * MS : undefined;
    });
    this.#tick();
  }

  #tick(): void {
    if (this.#queue.now >= (this.#faults.stopsAtMs ?? Number.POSITIVE_INFINITY) * MS) return;
    for (const byte of this.#host.heard.slice(this.#read)) this.#hear(byte);
    this.#read = this.#host.heard.length;
    if (this.#packet.length > 0 && this.#queue.now - this.#lastByte > 20 * MS) this.#gap();
    if (this.#queue.now >= this.#lineFreeAt) this.#say();
    this.#queue.after(0.5 * MS, () => this.#tick());
  }

  #hear({ byte, sound, end }: HeardByte): void {
    if (!sound && this.#faults.ignoresParity !== true) {
      this.#packet = [];
      if (!this.#host.isSending) this.#host.send(0xfe);
      return;
    }
    switch (this.#state) {
      case "waiting":
        if (byte === 0x00 && this.#faults.neverEnables !== true) this.#enable();
        return;
      case "enabling":
        if (byte === 0xfe && this.#faults.ignoresRefusal !== true) this.#enable();
        else if (byte === 0xfa || byte === 0xfe) this.#state = "streaming";
        return;
      case "streaming":
        this.#lastByte = end;
        if (this.#packet.length === 0 && (byte & 8) === 0 && this.#faults.neverResynchronises !== true)
          return;
        this.#packet.push(byte);
        if (this.#packet.length === 3) this.#takeApart(this.#packet);
    }
  }

  #enable(): void {
    this.#state = "enabling";
    this.#packet = [];
    const { holdUs = 120, wrongParity = false } = this.#faults;
    this.#host.send(0xf4, { hold: holdUs, wrongParity });
  }

  #gap(): void {
    const restarted = this.#packet[0] === 0xaa && this.#packet[1] === 0x00 && this.#packet.length === 2;
    if (restarted && this.#faults.ignoresRestart !== true) this.#enable();
    else if (this.#faults.neverResynchronises !== true) this.#packet = [];
  }

  /** The three bytes of a PS/2 mouse: signs in bits 4 and 5 of the first, buttons in bits 0 and 1. */
  #takeApart([head = 0, x = 0, y = 0]: readonly number[]): void {
    this.#packet = [];
    this.#moved += 1;
    if (this.#moved % (this.#faults.forgetsEvery ?? Number.POSITIVE_INFINITY) === 0) return;
    const up = y - ((head & 0x20) === 0 ? 0 : 256);
    const motion: Motion = {
      x: x - ((head & 0x10) === 0 ? 0 : 256),
      y: this.#faults.turnsYOver === true ? up : -up,
      left: (head & 1) !== 0,
      right: (head & 2) !== 0,
    };
    const last = this.#motions.at(-1);
    const isAlike = last?.left === motion.left && last.right === motion.right;
    if (last === undefined || this.#faults.queuesAll === true) this.#motions.push(motion);
    else if (isAlike) {
      last.x += motion.x;
      last.y += motion.y;
    } else if (this.#faults.losesShortClicks === true) {
      this.#motions = [{ ...motion, x: motion.x + last.x, y: motion.y + last.y }];
    } else this.#motions.push(motion);
  }

  #say(): void {
    if (this.#identifyAt !== undefined) {
      if (this.#queue.now >= this.#identifyAt) this.#identify();
      return;
    }
    const motion = this.#motions[0];
    if (!this.#isWanted) return;
    if (motion !== undefined) this.#report(motion);
    else if (this.#faults.floods === true) this.#send([0x40, 0, 0]);
  }

  #identify(): void {
    this.#identifyAt = undefined;
    this.#identified += 1;
    this.#motions = [];
    this.#last = { left: false, right: false };
    this.#isWanted = true;
    if (this.#faults.answersOnce === true && this.#identified > 1) return;
    this.#send(this.#faults.identification ?? [0x4d]);
  }

  #report(motion: Motion): void {
    const limit = this.#faults.doesNotClip === true ? 10_000 : 127;
    const x = Math.max(-limit, Math.min(limit, motion.x));
    const y = Math.max(-limit, Math.min(limit, motion.y));
    motion.x -= x;
    motion.y -= y;
    if (motion.x === 0 && motion.y === 0) this.#motions.shift();
    const isNew = motion.left !== this.#last.left || motion.right !== this.#last.right;
    if (x === 0 && y === 0 && !isNew) return;
    this.#last = motion;
    const head =
      0x40 | (motion.left ? 0x20 : 0) | (motion.right ? 0x10 : 0) | (((y >> 6) & 3) << 2) | ((x >> 6) & 3);
    this.#send([head, x & 0x3f, y & 0x3f]);
  }

  #send(bytes: readonly number[]): void {
    const bit = this.#faults.bitUs === undefined ? 1e12 / 1200 : this.#faults.bitUs * 1e6;
    const { now } = this.#queue;
    this.#lineFreeAt = send(
      this.#queue,
      this.#wires.rxd,
      now,
      bytes,
      { bit, dataBits: 7, stopBits: 1 },
      serialPlace,
    );
  }
}
