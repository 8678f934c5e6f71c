import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { firmwareWith, rightFirmware } from "../../../src-core/checks/runs/right-firmware.ts";
import { hostOfFiles } from "../../../src-core/reader/source-host.ts";
import { createService } from "../../../src-core/service/create-service.ts";
import { filesOf } from "../../firmwares/wrong-version.ts";
import { loadGrammar } from "../reader/syntax/load-grammar.ts";

type Files = Readonly<Record<string, string>>;

const grammar = await loadGrammar();

function started(files: Files) {
  const service = createService({ host: hostOfFiles(files), grammar, startName: "adapter" });
  const id = service.projectsAt(".")[0]?.id ?? "";
  return {
    run: (cancelled?: () => boolean) => service.runWhole(id, cancelled),
    check: () => service.check(id),
    rules: () => service.check(id).findings.map(({ rule }) => rule),
  };
}

/** What a check tells after the runs, and what they came to. */
function checked(files: Files) {
  const service = started(files);
  const tried = service.run();
  const { findings, notUnderstood } = service.check();
  return {
    ran: tried?.ran,
    findings,
    rules: findings.map(({ rule }) => rule),
    said: notUnderstood.map(({ message }) => message),
    /** The code under the findings. */
    code: findings.map(({ span }) => (files[span.file] ?? "").slice(span.start, span.end)),
  };
}

const withSettings = (files: Files, settings: object): Files => ({
  ...files,
  "edgewise.json": JSON.stringify(settings),
});

const impatient = firmwareWith("#define REPLY_MS 30", "#define REPLY_MS 5");

describe("right firmware is clean", () => {
  const samples = ["ferry-c", "ferry-sketch"].map((name) => `sample-workspace/${name}`);
  it.each(samples)("%s", (folder) => {
    const files = readdirSync(folder).map((name) => [name, readFileSync(`${folder}/${name}`, "utf8")]);
    expect(checked(Object.fromEntries(files))).toMatchObject({ ran: true, rules: [], said: [] });
  });
});

/** The author's pins are references, which the facts of the text do not follow. */
const byReference: Files = {
  "port.ino": `// @wire board atmega328p clock=16MHz
// @wire ps2 clock=2 data=3 pullups=internal
// @wire serial uart=0 rts=7 report=two-button shifter=inverting
struct Line {
  volatile uint8_t &out, &direction;
  uint8_t mask;
  void pull() { out &= ~mask; direction |= mask; }
  void release() { direction &= ~mask; out |= mask; }
};
Line clock = {PORTD, DDRD, _BV(PD2)};
Line data = {PORTD, DDRD, _BV(PD3)};
void setup() {
  Serial.begin(1200, SERIAL_7N1);
  clock.pull();
  delayMicroseconds(40);
  data.pull();
  clock.release();
}
void loop() {}
`,
};

describe("what runs show is told like any other finding", () => {
  // The clock is held for at least 100 us: The PS/2 Mouse/Keyboard Protocol (2003), Host-to-Device.
  it("of code whose lines only its notes tell as well", () => {
    expect(started(byReference).rules()).toEqual([]);
    const { rules, findings } = checked(byReference);
    expect(rules).toContain("ps2/request-hold-short");
    expect(findings.find(({ rule }) => rule === "ps2/request-hold-short")).toMatchObject({
      measured: { unit: "us" },
      limit: { atLeast: 100 },
    });
  });

  it("of a firmware of which it is said how often it was run", () => {
    const service = started(rightFirmware);
    expect(service.check().runs).toBeUndefined();
    service.run();
    expect(service.check().runs).toBeGreaterThan(1);
  });

  it("once for all runs, at the statement that did it, with figures", () => {
    const { findings, code } = checked(impatient);
    expect(code).toEqual(["DDRD |= line"]);
    expect(findings).toMatchObject([
      {
        rule: "ps2/reply-timeout-short",
        severity: "error",
        measured: { unit: "ms" },
        limit: { unit: "ms" },
        message: expect.stringContaining("mouse answers-late, PC hurried, stroke click"),
      },
    ]);
  });

  it("at the level that the project wants, or not at all", () => {
    const at = (level: string) =>
      checked(withSettings(impatient, { rules: { "ps2/reply-timeout-short": level } })).findings.map(
        ({ severity }) => severity,
      );
    expect(at("info")).toEqual(["info"]);
    expect(at("off")).toEqual([]);
  });

  const allow = `// @wire allow ps2/reply-timeout-short because "for this test"`;
  const allowed = (files: Files): Files => ({
    "main.c": (files["main.c"] ?? "").replace("  DDRD |= line;", `  ${allow}\n  DDRD |= line;`),
  });

  it("unless a note allows it; one that allows nothing is told when all was run", () => {
    expect(checked(allowed(impatient)).rules).toEqual([]);
    const idle = started(allowed(rightFirmware));
    expect(idle.rules()).toEqual([]);
    idle.run();
    expect(idle.rules()).toEqual(["note/unattached"]);
  });
});

describe("in brief, faults that are accepted are not counted", () => {
  const faultsOf = (files: Files) =>
    started(files)
      .run()
      ?.wholeRuns?.runs.map(({ faults, accepted }) => ({ open: faults.length, accepted }))
      .filter(({ open, accepted }) => open + accepted > 0);

  it("where their rule is off", () => {
    const open = faultsOf(impatient) ?? [];
    expect(open.length).toBeGreaterThan(0);
    expect(open.every(({ accepted }) => accepted === 0)).toBe(true);
    const off = faultsOf(withSettings(impatient, { rules: { "ps2/reply-timeout-short": "off" } }));
    // With what follows from them.
    expect(off).toEqual(open.map((run) => ({ open: 0, accepted: run.open })));
  });

  it("where a note allows them at the code that runs, and where it allows what the text shows", () => {
    const note = (rule: string) => `// @wire allow ${rule} because "for this test"\n`;
    const atCode = (impatient["main.c"] ?? "").replace(
      "  DDRD |= line;",
      `  ${note("ps2/reply-timeout-short")}  DDRD |= line;`,
    );
    const allowed = faultsOf({ "main.c": atCode }) ?? [];
    expect(allowed.length).toBeGreaterThan(0);
    for (const run of allowed) expect(run).toEqual({ open: 0, accepted: expect.any(Number) });
    // No PC reads twice the rate; all that goes wrong with it follows.
    const fast = firmwareWith("UBRR0 = 832;", `\n${note("serial/baud-error")}UBRR0 = 416;`);
    const runs = faultsOf(fast) ?? [];
    expect(runs.length).toBeGreaterThan(0);
    for (const { open } of runs) expect(open).toBe(0);
    for (const { open } of faultsOf(firmwareWith("UBRR0 = 832", "UBRR0 = 416")) ?? [])
      expect(open).toBeGreaterThan(0);
  });
});

describe("the same fault is told once", () => {
  it("where the text tells it", () => {
    const { rules, code } = checked(firmwareWith("_delay_us(120)", "_delay_us(50)"));
    expect(rules).toEqual(["ps2/request-hold-short"]);
    expect(code).toEqual(["50"]);
  });

  it("where a fault of the text explains what runs show: no PC reads twice the rate", () => {
    expect(checked(firmwareWith("UBRR0 = 832", "UBRR0 = 416")).rules).toEqual(["serial/baud-error"]);
  });

  it("where a fault of an encoder does", () => {
    expect(checked(firmwareWith("x = dx, y = -dy", "x = dx, y = dy")).rules).toEqual(["report/y-direction"]);
  });

  // The ninth bit of a movement is its sign, and the byte has the other eight (EM84502 data sheet, section E).
  it("as what it is where it needs no disturbance: x loses its highest bit, which shows behind one as well", () => {
    const masked = firmwareWith("dx = packet[1] - (", "dx = (packet[1] & 0x7F) - (");
    expect(checked(masked).rules).toEqual(["report/counts-lost"]);
  });

  it("as the axis that is turned over, whatever the stroke", () => {
    const turned = firmwareWith(
      "dy = packet[2] - (packet[0] & 0x20 ? 256 : 0)",
      "dy = (packet[0] & 0x20 ? 256 : 0) - packet[2]",
    );
    expect(checked(turned).rules).toEqual(["report/y-direction"]);
  });

  it("but what is allowed in one place is told of another", () => {
    const waits = firmwareWith(
      "static bool take_report(void) {",
      `// @wire allow ps2/wait-forever because "nobody calls it without a mouse"
static void wait_for_mouse(void) {
  while (PIND & CLOCK) {
  }
}

static bool take_report(void) {`,
    );
    const text = (waits["main.c"] ?? "").replace(
      "  sei();\n  bool",
      "  sei();\n  for (;;) {\n  }\n  wait_for_mouse();\n  bool",
    );
    expect(checked({ "main.c": text }).rules).toEqual(["ps2/wait-forever"]);
  });
});

describe("which runs are made", () => {
  it("those that edgewise.json names, and its own strokes with the first mouse", () => {
    const lame = firmwareWith("first->dx -= dx;\n    first->dy -= dy;", "first->dx = first->dy = 0;");
    const { findings } = checked(
      withSettings(lame, {
        simulate: {
          mice: ["wheel"],
          pcs: ["patient"],
          strokes: ["rest"],
          ownStrokes: { dash: [{ ms: 100, right: 1500 }] },
        },
      }),
    );
    expect(findings).toMatchObject([
      { message: expect.stringContaining("mouse wheel, PC patient, stroke dash") },
    ]);
  });

  // A step of the wheel is one count (mouse(4)), and the steps of two reports add up to those of one.
  it("one at the wheel where reports have it", () => {
    const right = filesOf("usart-ring-cpp");
    const forgets = (right["journey.cpp"] ?? "").replace(
      "last.wheel += movement.wheel;",
      "if (movement.wheel > 0) last.wheel += movement.wheel;",
    );
    const { findings } = checked({ ...right, "journey.cpp": forgets });
    expect(findings).toMatchObject([
      {
        rule: "report/counts-lost",
        message: expect.stringMatching(/on the wheel.*mouse wheel, PC rts-toggle, stroke wheel/),
      },
    ]);
  });

  it("none for parts of a firmware, and nothing is said of that", () => {
    const parts = (rightFirmware["main.c"] ?? "").replace("int main(void)", "void start(void)");
    expect(checked({ "main.c": parts })).toMatchObject({ ran: false, rules: [], said: [] });
  });

  it("none where the wires are not known, and what has to be said is said once", () => {
    const { ran, said } = checked(firmwareWith(" rts=4", ""));
    expect(ran).toBe(false);
    expect(said).toEqual([expect.stringContaining("RTS or DTR of the PC is not known")]);
  });
});

describe("runs end", () => {
  it("when they are cancelled, in the middle of one; the next are made anew", () => {
    const service = started(impatient);
    let asked = 0;
    expect(service.run(() => ++asked > 150)).toBeUndefined();
    expect(asked).toBe(151);
    expect(service.rules()).toEqual([]);
    expect(service.run(() => false)?.ran).toBe(true);
    expect(service.rules()).toEqual(["ps2/reply-timeout-short"]);
  });

  it("after one where the firmware stands still from the start", () => {
    const still = firmwareWith("  sei();\n  bool ready", "  for (;;) {\n  }\n  bool ready");
    const { findings, ran } = checked(still);
    expect(findings).toMatchObject([{ rule: "ps2/wait-forever" }]);
    expect(findings[0]?.message).not.toContain("other run");
    expect(ran).toBe(false);
  });

  it("where the code cannot be run further, which is said once and is nobody's fault", () => {
    const { rules, said, ran } = checked(
      firmwareWith("  queue_length = 0;\n    sent_buttons", '  __asm__ volatile("break");\n    sent_buttons'),
    );
    expect(rules).toEqual([]);
    expect(said).toEqual([expect.stringContaining("inline assembly")]);
    expect(ran).toBe(false);
  });

  it("when their time is over, which is said once", () => {
    const long = Object.fromEntries(
      ["a", "b", "c", "d", "e"].map((name) => [name, [{ ms: 14_000, right: 200 }]]),
    );
    const { rules, said, ran } = checked(
      withSettings(rightFirmware, { simulate: { mice: ["plain"], ownStrokes: long } }),
    );
    expect(rules).toEqual([]);
    expect(said).toEqual([expect.stringContaining("60 s of virtual time")]);
    expect(ran).toBe(false);
  });
});
