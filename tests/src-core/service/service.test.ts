import { describe, expect, test } from "vitest";
import { hostOfFiles, type SourceHost } from "../../../src-core/reader/source-host.ts";
import { createService } from "../../../src-core/service/create-service.ts";
import type { Service } from "../../../src-core/service/service.ts";
import { loadGrammar } from "../reader/syntax/load-grammar.ts";

const grammar = await loadGrammar();

/** A service over texts that a test may change. */
function serviceOver(files: Record<string, string>): Service {
  const host: SourceHost = {
    readText: (path) => files[path],
    listFolder: (path) => hostOfFiles(files).listFolder(path),
  };
  return createService({ host, grammar, startName: "firmware" });
}

/** Rules found in all projects at a path, in order. */
function rulesAt(service: Service, path: string): readonly string[] {
  return service.projectsAt(path).flatMap(({ id }) => service.check(id).findings.map(({ rule }) => rule));
}

const uart = (divisor: number) =>
  `#include <avr/io.h>\nvoid start(void) { UBRR0 = ${divisor}; UCSR0C = 1 << UCSZ01; UCSR0B = 1 << TXEN0; }\n`;
const settings =
  '{ "board": { "chip": "atmega328p", "clock": "16MHz" }, "wires": { "serial": { "baud": 1200, "line": "7N1" } } }';

// 832 for 1200 baud at 16 MHz: ATmega328P datasheet, "Equations for Calculating Baud Rate Register Setting".

describe("what a project is", () => {
  test("its id stays as files come and go, and a part of it has an id of its own", () => {
    const files: Record<string, string> = {
      "a/edgewise.json": settings,
      "a/main.c": "int main(void) { return 0; }\n",
      "a/lib/x.c": "",
    };
    const service = serviceOver(files);
    const ids = (path: string) => service.projectsAt(path).map(({ id }) => id);
    expect(ids(".")).toEqual(["a"]);
    expect(ids("a/lib")).toEqual(["a/lib"]);
    expect(ids("a/main.c")).toEqual(["a/main.c"]);
    files["a/more.c"] = uart(51);
    expect(ids(".")).toEqual(["a"]);
    expect(service.check("a").findings).toHaveLength(1);
  });

  test("what is not known as a project has nothing to say", () => {
    const service = serviceOver({});
    expect(service.projectsAt(".")).toEqual([]);
    expect(service.check("a").findings).toEqual([]);
    expect(service.hover("a", "a/main.c", 0)).toBeUndefined();
    expect(service.complete("a", "a/main.c", 0)).toEqual([]);
    expect(service.actions("a", { file: "a/main.c", start: 0, end: 0 })).toEqual([]);
  });

  test("what is forgotten is not known, until it is looked for again", () => {
    const service = serviceOver({ "edgewise.json": settings, "main.c": uart(51) });
    expect(rulesAt(service, ".")).toEqual(["serial/baud-error"]);
    service.forget(".");
    expect(service.check(".").files).toEqual([]);
    expect(rulesAt(service, ".")).toEqual(["serial/baud-error"]);
  });

  test("a file alone is checked with the settings above it", () => {
    const service = serviceOver({ "edgewise.json": settings, "main.c": uart(51), "other.c": uart(51) });
    const [entry] = service.projectsAt("main.c");
    expect(entry).toMatchObject({ root: ".", configured: true, units: 1 });
    expect(service.check("main.c").findings.map(({ span }) => span.file)).toEqual(["main.c"]);
  });
});

describe("a change is followed", () => {
  test("in a source", () => {
    const files = { "edgewise.json": settings, "main.c": uart(51) };
    const service = serviceOver(files);
    expect(rulesAt(service, ".")).toEqual(["serial/baud-error"]);
    files["main.c"] = uart(832);
    expect(service.check(".").findings).toEqual([]);
    files["main.c"] = uart(51);
    expect(service.check(".").findings).toHaveLength(1);
  });

  test("in a header, also one that names the chip", () => {
    const board = (chip: string) =>
      `// @wire board ${chip} clock=16MHz\n// @wire serial uart=0 baud=1200 line=7N1\n`;
    const files = { "board.h": board("atmega328p"), "main.c": `#include "board.h"\n${uart(51)}` };
    const service = serviceOver(files);
    expect(rulesAt(service, ".")).toEqual(["serial/baud-error"]);
    files["board.h"] = board("atmega328p").replace("16MHz", "1MHz");
    expect(service.check(".").findings).toEqual([]);
  });

  test("in edgewise.json, when projects are looked for again", () => {
    const files = { "edgewise.json": settings, "main.c": uart(51) };
    const service = serviceOver(files);
    expect(rulesAt(service, ".")).toEqual(["serial/baud-error"]);
    files["edgewise.json"] = settings.replace(
      '{ "board"',
      '{ "rules": { "serial/baud-error": "off" }, "board"',
    );
    expect(rulesAt(service, ".")).toEqual([]);
  });
});

describe("notes and settings", () => {
  test("an allowed finding is not told, and an allowance without a finding is", () => {
    const note = '// @wire allow serial/baud-error because "the PC end is set to it"\n';
    const allowed = uart(51).replace("void start", `${note}void start`);
    expect(rulesAt(serviceOver({ "edgewise.json": settings, "main.c": allowed }), ".")).toEqual([]);
    const idle = uart(832).replace("void start", `${note}void start`);
    expect(rulesAt(serviceOver({ "edgewise.json": settings, "main.c": idle }), ".")).toEqual([
      "note/unattached",
    ]);
  });

  test("the offered note makes the finding go away", () => {
    const files = { "edgewise.json": settings, "main.c": uart(51) };
    const service = serviceOver(files);
    service.projectsAt(".");
    const [finding] = service.check(".").findings;
    if (finding === undefined) throw new Error("no finding");
    const allow = service.actions(".", finding.span).find(({ kind }) => kind === "allow");
    const [edit] = allow?.edits ?? [];
    if (edit === undefined) throw new Error("no edit");
    const { start, end } = edit.span;
    files["main.c"] = files["main.c"].slice(0, start) + edit.text + files["main.c"].slice(end);
    expect(service.check(".").findings).toEqual([]);
  });

  test("faults of edgewise.json are told with what would be right, and the rest of it holds", () => {
    const broken = settings.replace("{ ", '{ "bord": 1, ');
    const service = serviceOver({ "edgewise.json": broken, "main.c": uart(51) });
    expect(rulesAt(service, ".")).toEqual(["serial/baud-error"]);
    const [fault] = service.check(".").settingsFaults;
    expect(broken.slice(fault?.span.start, fault?.span.end)).toBe('"bord"');
    expect(fault?.fix?.edits[0]?.text).toBe('"board"');
  });
});

describe("running the firmware", () => {
  // Bit 6 of the first byte is always set in the three-byte reports: mouse(4) of the Linux man-pages,
  // "table of the three-byte packet".
  const encoder = (body: string) =>
    `// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire encodes two-button from x=dx y=dy left=l right=r into out
void encode(uint8_t out[3], int8_t dx, int8_t dy, uint8_t l, uint8_t r) {
${body}
}
`;
  const firstByte = (mark: string) =>
    `  out[0] = ${mark}(l ? 0x20 : 0) | (r ? 0x10 : 0) | ((dy & 0xC0) >> 4) | ((dx & 0xC0) >> 6);`;
  const rest = "  out[1] = dx & 0x3F;\n  out[2] = dy & 0x3F;";
  const right = encoder(`${firstByte("0x40 | ")}\n${rest}`);
  const wrong = encoder(`${firstByte("")}\n${rest}`);
  const allowed = (text: string) =>
    text.replace("  out[0]", '  // @wire allow report/sync-bit because "another part adds it"\n  out[0]');
  const foundIn = (service: Service) => service.check("main.c").findings.map(({ rule }) => rule);
  const started = (files: Record<string, string>) => {
    const service = serviceOver(files);
    service.projectsAt("main.c");
    return service;
  };

  test("what it shows is told from then on, until a file changes", () => {
    const files = { "main.c": wrong };
    const service = started(files);
    expect(foundIn(service)).toEqual([]);
    const tried = service.tryOut("main.c");
    expect(tried).toMatchObject({ whole: true, notUnderstood: [] });
    expect(foundIn(service)).toEqual(["report/sync-bit"]);
    files["main.c"] = `${wrong}\n`;
    expect(foundIn(service)).toEqual([]);
  });

  test("what another service found out can be handed over as a copy", () => {
    const tried = started({ "main.c": wrong }).tryOut("main.c");
    if (tried === undefined) throw new Error("not tried");
    const service = started({ "main.c": wrong });
    service.takeOver("main.c", structuredClone(tried));
    expect(foundIn(service)).toEqual(["report/sync-bit"]);
  });

  test("a run that is cancelled shows nothing, and the next one all", () => {
    const service = started({ "main.c": wrong });
    expect(service.tryOut("main.c", () => true)).toBeUndefined();
    expect(service.tryOut("main.c", () => false)?.findings).toHaveLength(1);
  });

  test("an allow is called unattached only when all was run and there was nothing to allow", () => {
    const silenced = started({ "main.c": allowed(wrong) });
    expect(foundIn(silenced)).toEqual([]);
    silenced.tryOut("main.c");
    expect(foundIn(silenced)).toEqual([]);

    const idle = started({ "main.c": allowed(right) });
    expect(foundIn(idle)).toEqual([]);
    idle.tryOut("main.c");
    expect(foundIn(idle)).toEqual(["note/unattached"]);

    const endless = started({ "main.c": allowed(right).replace("out[1]", "for (;;) {}\n  out[1]") });
    expect(endless.tryOut("main.c")).toMatchObject({ whole: false, notUnderstood: [expect.anything()] });
    expect(foundIn(endless)).toEqual([]);
  });
});

describe("hover and completion", () => {
  const files = { "edgewise.json": settings, "main.c": `// @wire ps2 clock=PD2\n${uart(51)}` };
  const service = serviceOver(files);
  service.projectsAt(".");
  const offsetOf = (file: keyof typeof files, text: string) => files[file].indexOf(text) + 1;

  test("a divisor is explained by the rate that it makes", () => {
    const hover = service.hover(".", "main.c", offsetOf("main.c", "51"));
    // 16 MHz / (16 * (51 + 1)): the datasheet's equation.
    expect(hover?.markdown).toContain("19231");
  });

  test("a word of a note is explained, and so is a key of edgewise.json", () => {
    expect(service.hover(".", "main.c", offsetOf("main.c", "ps2"))?.markdown).toContain("@wire ps2");
    const key = service.hover(".", "edgewise.json", offsetOf("edgewise.json", '"clock"'));
    expect(files["edgewise.json"].slice(key?.span.start, key?.span.end)).toBe('"clock"');
  });

  test("pins of the project's chip are offered in a note", () => {
    const offset = files["main.c"].indexOf("PD2") + 1;
    const labels = service.complete(".", "main.c", offset).map(({ label }) => label);
    expect(labels).toContain("PD3");
    expect(labels).not.toContain("PE3");
  });

  test("rules are offered in edgewise.json", () => {
    const text = '{ "rules": { "" } }';
    files["edgewise.json"] = text;
    const labels = service.complete(".", "edgewise.json", text.indexOf('""') + 1).map(({ label }) => label);
    expect(labels).toContain("serial/baud-error");
  });
});

describe("a rule that edgewise.json turns off", () => {
  const withRules = (rules: string, divisor: number) =>
    serviceOver({
      "edgewise.json": settings.replace("{ ", `{ "rules": ${rules}, `),
      "main.c": uart(divisor),
    });
  const found = (service: Service) =>
    service
      .projectsAt(".")
      .flatMap(({ id }) => service.check(id).findings)
      .map(({ rule, span, message }) => [rule, span.file, message]);

  test("is not told while it hides something, and told where it hides nothing", () => {
    expect(found(withRules('{ "serial/baud-error": "off" }', 51))).toEqual([]);
    expect(found(withRules('{ "serial/baud-error": "off" }', 832))).toEqual([
      [
        "note/unattached",
        "edgewise.json",
        "there is nothing to turn off: `serial/baud-error` finds no fault in this firmware; take it out of `rules`",
      ],
    ]);
  });

  test("is not told where nobody wants that told, nor of a level that hides nothing", () => {
    expect(found(withRules('{ "serial/baud-error": "off", "note/unattached": "off" }', 832))).toEqual([]);
    expect(found(withRules('{ "serial/baud-error": "info" }', 832))).toEqual([]);
  });
});
