import { describe, expect, it } from "vitest";
import { findProjects } from "../../../src-core/project/find-projects.ts";
import type { Project } from "../../../src-core/project/project.ts";
import { hostOfFiles, type SourceHost } from "../../../src-core/reader/source-host.ts";
import { SMALL_VOCABULARY } from "../notes/small-vocabulary.ts";

function find(files: Readonly<Record<string, string>>, path: string, startName?: string): readonly Project[] {
  const context = startName === undefined ? {} : { startName };
  return findProjects(hostOfFiles(files), path, { vocabulary: SMALL_VOCABULARY, ...context });
}

/** `root: first+second, other` for each project. */
function shape(projects: readonly Project[]): readonly string[] {
  return projects.map(
    ({ root, units }) => `${root}: ${units.map((unit) => unit.mains.join("+")).join(", ")}`,
  );
}

describe("which folders are projects", () => {
  it("takes a folder with edgewise.json with all below it, except folders with their own", () => {
    const files = {
      "ferry/edgewise.json": "{}",
      "ferry/main.c": "",
      "ferry/lib/ring.c": "",
      "ferry/harbour/edgewise.json": "{}",
      "ferry/harbour/quay.c": "",
    };
    expect(shape(find(files, "ferry"))).toEqual([
      "ferry: ferry/main.c, ferry/lib/ring.c",
      "ferry/harbour: ferry/harbour/quay.c",
    ]);
  });

  it("reads a sketch as one unit, the file named like the folder first, then the rest by name", () => {
    const files = {
      "ferry/zeta.ino": "",
      "ferry/ferry.ino": "",
      "ferry/alpha.ino": "",
      "ferry/ring.cpp": "",
    };
    const [project] = find(files, "ferry");
    expect(project?.units).toEqual([
      {
        mains: ["ferry/ferry.ino", "ferry/alpha.ino", "ferry/zeta.ino"],
        language: "c++",
        prelude: ["Arduino.h"],
      },
      { mains: ["ferry/ring.cpp"], language: "c++", prelude: [] },
    ]);
  });

  it("takes the src folder of a sketch, at any depth, and leaves its other folders alone", () => {
    const files = {
      "ferry/ferry.ino": "",
      "ferry/src/ring.c": "",
      "ferry/src/deep/queue.cpp": "",
      "ferry/extras/trial.c": "",
    };
    expect(shape(find(files, "ferry"))).toEqual([
      "ferry: ferry/ferry.ino, ferry/src/ring.c, ferry/src/deep/queue.cpp",
      "ferry/extras: ferry/extras/trial.c",
    ]);
  });

  it("takes a folder of C and C++ files as one project, each file a unit in its language", () => {
    const files = {
      "ferry/main.c": "",
      "ferry/a.cpp": "",
      "ferry/b.cc": "",
      "ferry/c.cxx": "",
      "ferry/d.h": "",
    };
    const [project] = find(files, "ferry");
    expect(project?.units.map(({ mains, language }) => [mains[0], language])).toEqual([
      ["ferry/a.cpp", "c++"],
      ["ferry/b.cc", "c++"],
      ["ferry/c.cxx", "c++"],
      ["ferry/main.c", "c"],
    ]);
  });

  it("keeps a folder with src or a makefile together", () => {
    expect(shape(find({ "p/src/a.c": "", "p/lib/b.c": "" }, "p"))).toEqual(["p: p/lib/b.c, p/src/a.c"]);
    expect(shape(find({ "p/Makefile": "", "p/x/a.c": "", "p/y/b.c": "" }, "p"))).toEqual([
      "p: p/x/a.c, p/y/b.c",
    ]);
  });

  it("finds each project of a folder that only gathers them", () => {
    const files = { "all/one/main.c": "", "all/two/two.ino": "", "all/three/notes.txt": "" };
    expect(shape(find(files, "all"))).toEqual(["all/one: all/one/main.c", "all/two: all/two/two.ino"]);
  });

  it("works from the host's start and from absolute paths", () => {
    expect(shape(find({ "main.c": "", "lib/ring.c": "" }, "."))).toEqual([".: main.c, lib/ring.c"]);
    expect(shape(find({ "/home/ferry/main.c": "" }, "/home/ferry/"))).toEqual([
      "/home/ferry: /home/ferry/main.c",
    ]);
  });

  it("uses the start's real name, or the file with setup, for the order of a sketch at the start", () => {
    const files = { "alpha.ino": "", "ferry.ino": "void setup() {}" };
    expect(shape(find(files, ".", "ferry"))).toEqual([".: ferry.ino+alpha.ino"]);
    expect(shape(find(files, "."))).toEqual([".: ferry.ino+alpha.ino"]);
  });

  it("leaves out hidden folders, packages and build outputs", () => {
    const files = {
      "p/main.c": "",
      "p/.git/x.c": "",
      "p/node_modules/y.c": "",
      "p/build/z.c": "",
      "p/cmake-build-debug/w.c": "",
    };
    expect(shape(find(files, "p"))).toEqual(["p: p/main.c"]);
  });

  it("finds nothing where there is nothing", () => {
    expect(find({ "p/read.me": "" }, "p")).toEqual([]);
    expect(find({}, "nowhere")).toEqual([]);
    expect(find({ "p/picture.png": "" }, "p/picture.png")).toEqual([]);
  });
});

describe("settings", () => {
  it("reads only files that fit a glob of sources", () => {
    const files = {
      "p/edgewise.json": '{"sources": ["*.c", "src/**/*.cpp"]}',
      "p/main.c": "",
      "p/old/main.c": "",
      "p/src/a.cpp": "",
      "p/src/deep/b.cpp": "",
    };
    expect(shape(find(files, "p"))).toEqual(["p: p/main.c, p/src/a.cpp, p/src/deep/b.cpp"]);
  });

  it("reads files beside the project that a glob names", () => {
    const files = {
      "p/edgewise.json": '{"sources": ["*.c", "../shared/*.c"]}',
      "p/main.c": "",
      "shared/ring.c": "",
    };
    expect(shape(find(files, "p"))).toEqual(["p: p/main.c, shared/ring.c"]);
  });

  it("says which glob no file fits", () => {
    const text = '{"sources": ["*.c", "scr/*.c"]}';
    const [project] = find({ "p/edgewise.json": text, "p/main.c": "" }, "p");
    const start = text.indexOf('"scr');
    expect(project?.problems).toEqual([
      {
        span: { file: "p/edgewise.json", start, end: start + '"scr/*.c"'.length },
        message: "`sources`: no file fits `scr/*.c`",
        suggestion: undefined,
      },
    ]);
  });

  it("resolves include paths against the root, before the folders that commonly hold headers", () => {
    const files = {
      "p/edgewise.json": '{"includePaths": ["lib", "../shared"], "defines": {"F_CPU": "16000000UL"}}',
      "p/main.c": "",
      "p/include/board.h": "",
    };
    const [project] = find(files, "p");
    expect(project?.includePaths).toEqual(["p/lib", "shared", "p", "p/include"]);
    expect(project?.defines).toEqual(new Map([["F_CPU", "16000000UL"]]));
  });

  it("keeps a project whose edgewise.json is broken, with what is wrong", () => {
    const [project] = find({ "p/edgewise.json": '{"bord": {}}', "p/main.c": "" }, "p");
    expect(project?.problems.map((problem) => problem.message)).toEqual([
      "there is no `bord`; did you mean `board`?",
    ]);
    expect(project?.units).toHaveLength(1);
  });

  it("checks a folder inside a project with the project's settings", () => {
    const files = { "p/edgewise.json": '{"defines": {"A": "1"}}', "p/main.c": "", "p/lib/ring.c": "" };
    const [project] = find(files, "p/lib");
    expect(shape(find(files, "p/lib"))).toEqual(["p: p/lib/ring.c"]);
    expect(project?.defines.get("A")).toBe("1");
  });
});

describe("a single file", () => {
  const files = {
    "p/edgewise.json": '{"defines": {"A": "1"}}',
    "p/main.c": "",
    "p/lib/ring.cpp": '#include "ring.h"\n',
    "p/lib/ring.h": '#include "types.h"\n',
    "p/lib/types.h": "",
    "p/lib/plain.h": "",
    "p/ferry/ferry.ino": "",
    "p/ferry/a.ino": "",
  };

  it("is one unit with the settings of the nearest folder above", () => {
    const [project] = find(files, "p/lib/ring.cpp");
    expect(shape(find(files, "p/lib/ring.cpp"))).toEqual(["p: p/lib/ring.cpp"]);
    expect(project?.defines.get("A")).toBe("1");
  });

  it("brings the whole sketch of an .ino file", () => {
    expect(shape(find(files, "p/ferry/a.ino"))).toEqual(["p: p/ferry/ferry.ino+p/ferry/a.ino"]);
  });

  it("gives a header the language of those who include it", () => {
    const languages = ["p/lib/types.h", "p/lib/plain.h"].map(
      (path) => find(files, path)[0]?.units[0]?.language,
    );
    expect(languages).toEqual(["c++", "c"]);
  });
});

describe("odd folders", () => {
  it("stops where links lead in circles", () => {
    const loop: SourceHost = {
      readText: (path) => (path.endsWith("main.c") ? "int main(void);" : undefined),
      listFolder: () => ["main.c", "again/"],
    };
    const projects = findProjects(loop, "p", { vocabulary: SMALL_VOCABULARY });
    expect(shape(projects)).toEqual(["p: p/main.c"]);
  });

  it("ends in folders that multiply without end", () => {
    let asked = 0;
    const endless: SourceHost = {
      readText: () => undefined,
      listFolder: () => {
        asked++;
        return ["a/", "b/", "c/"];
      },
    };
    expect(findProjects(endless, "p", { vocabulary: SMALL_VOCABULARY })).toEqual([]);
    expect(asked).toBeLessThan(20_000);
  });

  it("bears odd names", () => {
    const host: SourceHost = {
      readText: (path) => (/\.c$/i.test(path) ? "" : undefined),
      listFolder: (path) =>
        path === "p" ? ["", "/", "..", "../", "a b.c", "ünï.c", ".c", "x.C", "constructor"] : [],
    };
    const projects = findProjects(host, "p", { vocabulary: SMALL_VOCABULARY });
    expect(shape(projects)).toEqual(["p: p/a b.c, p/x.C, p/ünï.c"]);
    expect(projects[0]?.units.map((unit) => unit.language)).toEqual(["c", "c++", "c"]);
  });
});
