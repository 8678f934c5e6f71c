import { expect, test } from "vitest";
import { oneAtATime, QuietTimer } from "../../../server/language-server/pause.ts";

test("who waits for quiet comes after the work, at once where nothing is waited for", async () => {
  const order: string[] = [];
  const timer = new QuietTimer(() => order.push("work"));
  await timer.quiet();
  timer.poke(5);
  const waiting = timer.quiet().then(() => order.push("waited"));
  timer.poke(5);
  await waiting;
  await timer.quiet();
  expect(order).toEqual(["work", "waited"]);
});

test("nobody waits for a timer that was stopped", async () => {
  const timer = new QuietTimer(() => {
    throw new Error("was stopped");
  });
  timer.poke(1);
  const waiting = timer.quiet();
  timer.stop();
  await waiting;
  expect(await timer.quiet()).toBeUndefined();
});

test("what is asked for many times while it is at work is done once more", async () => {
  let calls = 0;
  let finish: () => void = () => undefined;
  const ask = oneAtATime(() => {
    calls += 1;
    return new Promise((resolve) => {
      finish = resolve;
    });
  });
  for (let times = 0; times < 5; times++) ask();
  expect(calls).toBe(1);
  finish();
  await new Promise(setImmediate);
  expect(calls).toBe(2);
  finish();
  await new Promise(setImmediate);
  expect(calls).toBe(2);
  ask();
  expect(calls).toBe(3);
});
