import { describe, expect, test } from "vitest";
import { mice } from "../../../../src-core/bench/mice/profiles.ts";
import { step } from "../../../../src-core/bench/strokes/stroke.ts";
import { ms } from "../../../../src-core/bench/time/time.ts";
import { seeded } from "../../../endurance/seeded.ts";
import { randomSeed } from "../../../random-seed.ts";
import { type Desk, hex, readyDesk } from "./desk.ts";

const firstSeed = randomSeed("EDGEWISE_SEED", 4100);

/** Pulls the lines and lets them go at random, for a while. */
function pullAbout({ host, pass, wires }: Desk, random: () => number, times: number): void {
  const cause = { party: "firmware", at: undefined } as const;
  host.deaf = true;
  for (let each = 0; each < times; each += 1) {
    const wire = random() < 0.6 ? wires.clock : wires.data;
    const drives = ["low", "released", "released", "high"] as const;
    wire.drive("firmware", drives[Math.floor(random() * drives.length)] ?? "released", cause);
    pass(random() < 0.5 ? random() * 0.3 : random() * 20);
  }
  host.deaf = false;
  host.hold("released");
}

describe(`a host that pulls the lines at random, seeds from ${firstSeed}`, () => {
  test.each(mice.map(({ name }) => name))("%s: lets go in the end, and takes a reset", (name) => {
    for (let seed = firstSeed; seed < firstSeed + 6; seed += 1) {
      const random = seeded(seed);
      const ready = readyDesk(name, seed);
      ready.ask(0xf4);
      ready.mouse.perform({
        name: "",
        title: "",
        steps: [step({ over: 2000 * ms, right: 900, down: -400 })],
      });
      pullAbout(ready, random, 60);
      // Longer than a mouse that restarts or is plugged again needs, and than the stroke.
      ready.pass(3000);
      expect([ready.wires.clock.driveOf("mouse"), ready.wires.data.driveOf("mouse")]).toEqual([
        "released",
        "released",
      ]);
      ready.host.forget();
      let tries = 0;
      while (hex(ready.ask(0xff)).slice(-2) !== "FA" && tries < 2) tries += 1;
      ready.pass(1100);
      expect(hex(ready.host.bytes().slice(-3)), `seed ${seed}`).toBe("FA AA 00");
      const { sent } = ready.mouse.record;
      expect(sent.every(({ whole, clocks }) => (whole ? clocks === 11 : clocks >= 1 && clocks <= 10))).toBe(
        true,
      );
    }
  });
});
