import { describe, expect, test } from "vitest";
import { hostIgnoringCase } from "../host-ignoring-case.ts";
import { readFiles, readText, spell } from "./read.ts";

function read(
  files: Readonly<Record<string, string>>,
  settings: Parameters<typeof readFiles>[1] = {},
): string {
  const { tokens, problems, missing } = readFiles(files, settings);
  expect({ problems, missing }).toEqual({ problems: [], missing: [] });
  return spell(tokens);
}

describe("where a header is looked for", () => {
  const files = {
    "app/main.c": '#include "x.h"\n#include <x.h>\n#include "only.h"',
    "app/x.h": "beside",
    "lib/x.h": "library",
    "lib/only.h": "only",
  };

  test("in quotes beside the file, then on the include paths; in angle brackets on the paths alone", () => {
    expect(read(files, { mains: ["app/main.c"], includePaths: ["lib"] })).toBe("beside library only");
  });

  test("built-in headers come last", () => {
    const standIns = { "x.h": "built in", "only.h": "built in" };
    expect(read(files, { mains: ["app/main.c"], standIns })).toBe("beside built in built in");
  });

  test("an included file's includes are beside it", () => {
    expect(
      read({
        "main.c": '#include "a/b/x.h"',
        "a/b/x.h": '#include "../y.h"\n#include "./z.h"',
        "a/y.h": "y",
        "a/b/z.h": "z",
      }),
    ).toBe("y z");
  });

  test("absolute paths and paths above the folder", () => {
    expect(
      read(
        { "/w/a/main.c": '#include "../b/x.h"\n#include "/w/y.h"', "/w/b/x.h": "x", "/w/y.h": "y" },
        { mains: ["/w/a/main.c"] },
      ),
    ).toBe("x y");
    expect(read({ "main.c": '#include "../x.h"', "../x.h": "x" })).toBe("x");
  });

  test("a share of the network and another drive", () => {
    expect(
      read(
        {
          "//harbour/share/main.c": '#include "x.h"\n#include "C:/lib/y.h"',
          "//harbour/share/x.h": "x",
          "C:/lib/y.h": "y",
        },
        { mains: ["//harbour/share/main.c"] },
      ),
    ).toBe("x y");
  });

  test("#include_next goes on behind the file itself", () => {
    const shadowed = {
      "main.c": '#include "x.h"',
      "x.h": "first\n#include_next <x.h>",
      "lib/x.h": "second\n#include_next <x.h>",
    };
    expect(read(shadowed, { includePaths: ["", "lib"], standIns: { "x.h": "third" } })).toBe(
      "first second third",
    );
  });

  test("computed names (C11 6.10.2, 4)", () => {
    const text =
      '#define Q "a.h"\n#include Q\n#define A <b.h>\n#include A\n#define N(x) <x.h>\n#include N(b)';
    expect(read({ "main.c": text, "a.h": "a" }, { standIns: { "b.h": "b" } })).toBe("a b b");
  });
});

describe("headers in other spellings", () => {
  const files = {
    "fw/src/main.c": '#include "../LIB/Ring.h"\n#include "Queue.h"\n#include "queue.h"',
    "fw/lib/ring.h": '#include "Board.h"\nring',
    "fw/lib/board.h": "board",
    "fw/src/queue.h": "#pragma once\nqueue",
  };

  test("where case is ignored, a header is the file that its folder lists", () => {
    const { tokens, files: read } = readFiles(files, { mains: ["fw/src/main.c"], hostOf: hostIgnoringCase });
    expect(spell(tokens)).toBe("board ring queue");
    expect(read).toEqual(["fw/src/main.c", "fw/lib/ring.h", "fw/lib/board.h", "fw/src/queue.h"]);
  });

  test("an include path in other case is the folder that is listed", () => {
    const { files: read } = readFiles(
      { "main.c": "#include <ring.h>", "lib/ring.h": "#include_next <Ring.h>", "more/ring.h": "more" },
      { includePaths: ["Lib", "MORE"], hostOf: hostIgnoringCase },
    );
    expect(read).toEqual(["main.c", "lib/ring.h", "more/ring.h"]);
  });

  test("where case counts, the header is not there", () => {
    const { missing } = readFiles(files, { mains: ["fw/src/main.c"] });
    expect(missing.map(({ name }) => name)).toEqual(["../LIB/Ring.h", "Queue.h"]);
  });

  test("a backslash is taken for a slash", () => {
    const text = '#include "..\\lib\\board.h"\n#include <avr\\x.h>';
    const { tokens, files: read } = readFiles(
      { ...files, "fw/src/main.c": text },
      { mains: ["fw/src/main.c"], standIns: { "avr/x.h": "x" } },
    );
    expect(spell(tokens)).toBe("board x");
    expect(read).toEqual(["fw/src/main.c", "fw/lib/board.h"]);
  });
});

describe("files that are read once", () => {
  test("include guards, #pragma once and #import", () => {
    const files = {
      "main.c":
        '#include "g.h"\n#include "g.h"\n#include "o.h"\n#include "o.h"\n#import "i.h"\n#import "i.h"\n#include "n.h"\n#include "n.h"',
      "g.h": "// guard\n#if !defined(G_H)\n#define G_H\ng\n#endif",
      "o.h": "#pragma once\no",
      "i.h": "i",
      "n.h": "n",
    };
    expect(read(files)).toBe("g o i n n");
  });
});

describe("headers that are not there", () => {
  test("each name is said once, at its first place", () => {
    const text = '#include <vendor.h>\n#include "own.h"\n#include <vendor.h>\nx';
    const { tokens, missing, problems } = readText(text);
    expect(spell(tokens)).toBe("x");
    expect(missing.map(({ name, span }) => [name, span.file, span.start])).toEqual([
      ["vendor.h", "main.c", 0],
      ["own.h", "main.c", 20],
    ]);
    expect(problems).toEqual([]);
  });

  test("a main file that cannot be read is said", () => {
    const { problems } = readFiles({}, { mains: ["gone.c"] });
    expect(problems.map(({ message }) => message)).toEqual(["gone.c cannot be read."]);
  });

  test("what goes wrong inside a built-in header is said at the include that led there", () => {
    const standIns = { "outer.h": "#include <inner.h>", "inner.h": '#error "no clock"\n#include <none.h>' };
    const { problems, missing } = readText("int x;\n#include <outer.h>", { standIns });
    expect(problems.map(({ span, message }) => [span.file, span.start, message])).toEqual([
      ["main.c", 7, '#error "no clock"'],
    ]);
    expect(missing.map(({ span, name }) => [span.file, span.start, name])).toEqual([["main.c", 7, "none.h"]]);
  });

  test("an include in the arguments of a call is said", () => {
    const { tokens, problems } = readFiles({ "main.c": '#define f(x) x\nf(\n#include "a.h"\n)', "a.h": "a" });
    expect(spell(tokens)).toBe("");
    expect(problems.map(({ message }) => message)).toEqual([
      "An #include inside the arguments of a macro is not read.",
    ]);
  });
});

test("the prelude comes before the first line", () => {
  const standIns = { "core.h": "#define CORE 1\ncore" };
  expect(read({ "main.c": "CORE" }, { prelude: ["core.h"], standIns })).toBe("core 1");
});
