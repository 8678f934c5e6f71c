import { describe, expect, test } from "vitest";
import { type Event, EventQueue } from "../../../../src-core/bench/time/event-queue.ts";
import { never } from "../../../../src-core/bench/time/time.ts";
import { seeded } from "../../../endurance/seeded.ts";
import { randomSeed } from "../../../random-seed.ts";

const firstSeed = randomSeed("EDGEWISE_SEED", 900);

describe("the event queue", () => {
  test("lets events happen in order of time, those of one moment in the order asked for", () => {
    const queue = new EventQueue();
    const happened: string[] = [];
    for (const [time, name] of [
      [5, "c"],
      [3, "a"],
      [5, "d"],
      [3, "b"],
      [9, "e"],
    ] as const) {
      queue.at(time, () => happened.push(`${name}${queue.now}`));
    }
    expect(queue.next).toBe(3);
    queue.advanceTo(5);
    expect(happened).toEqual(["a3", "b3", "c5", "d5"]);
    expect([queue.now, queue.next]).toEqual([5, 9]);
    queue.advanceTo(20);
    expect([queue.now, queue.next, happened.at(-1)]).toEqual([20, never, "e9"]);
  });

  test("leaves out what was cancelled, and takes what is asked for while it happens", () => {
    const queue = new EventQueue();
    const happened: number[] = [];
    const later = queue.at(4, () => happened.push(4));
    queue.at(2, () => {
      later.cancelled = true;
      queue.after(0, () => happened.push(queue.now));
      queue.after(1, () => happened.push(queue.now));
    });
    queue.advanceTo(10);
    expect(happened).toEqual([2, 3]);
  });

  test("refuses the past", () => {
    const queue = new EventQueue();
    queue.advanceTo(7);
    expect(() => queue.at(6, () => undefined)).toThrow("an event at 6 ps, which is before now (7 ps)");
  });

  /** The same as a list that is sorted by time, and by the order asked for. */
  test(`of many at random, seeds from ${firstSeed}`, () => {
    for (let seed = firstSeed; seed < firstSeed + 50; seed += 1) {
      const random = seeded(seed);
      const queue = new EventQueue();
      const happened: number[] = [];
      const asked: { readonly time: number; readonly name: number; readonly event: Event }[] = [];
      for (let name = 0; name < 200; name += 1) {
        const time = Math.floor(random() * 60);
        asked.push({ time, name, event: queue.at(time, () => happened.push(name)) });
      }
      for (const { event } of asked) if (random() < 0.2) event.cancelled = true;
      const expected = asked
        .filter(({ event }) => !event.cancelled)
        .sort((a, b) => a.time - b.time || a.name - b.name)
        .map(({ name }) => name);
      queue.advanceTo(30);
      queue.advanceTo(100);
      expect(happened).toEqual(expected);
    }
  });
});
