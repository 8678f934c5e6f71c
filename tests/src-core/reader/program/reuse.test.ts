import { expect, test } from "vitest";
import { ProgramCache } from "../../../../src-core/reader/program/program-cache.ts";
import { hostIgnoringCase } from "../host-ignoring-case.ts";
import { readFiles } from "./read-files.ts";

const files = {
  "board.h": "#define WAIT 100\n",
  "a.c": '#include "board.h"\nint wait = WAIT;\n',
  "b.c": "int other = 5;\n",
};

test("a unit none of whose files changed is the same as before; the others are read anew", async () => {
  const cache = new ProgramCache();
  const first = await readFiles(files, cache);
  const same = await readFiles({ ...files }, cache);
  expect(same.units[0]).toBe(first.units[0]);
  expect(same.units[1]).toBe(first.units[1]);
  const edited = await readFiles({ ...files, "board.h": "#define WAIT 120\n" }, cache);
  expect(edited.units[0]).not.toBe(first.units[0]);
  expect(edited.units[1]).toBe(first.units[1]);
  expect(edited.units[0]?.typed.variables[0]?.initializer).toMatchObject({ value: { value: 120n } });
});

test("a header that appears is noticed", async () => {
  const cache = new ProgramCache();
  const source = '#include "late.h"\nint x = LATE;\n';
  const before = await readFiles({ "main.c": source }, cache);
  expect(before.units[0]?.preprocessed.missing).toMatchObject([{ name: "late.h" }]);
  const after = await readFiles({ "main.c": source, "late.h": "#define LATE 7\n" }, cache);
  expect(after.units[0]?.preprocessed.missing).toEqual([]);
  expect(after.units[0]?.typed.variables[0]?.initializer).toMatchObject({ value: { value: 7n } });
});

test("a header whose name changes in case alone is noticed", async () => {
  const cache = new ProgramCache();
  const filesOf = async (header: string) => {
    const named = { "main.c": '#include "ring.h"\n', [header]: "#define RING 7\n" };
    const program = await readFiles(named, cache, hostIgnoringCase(named));
    return program.units[0]?.preprocessed.files;
  };
  expect(await filesOf("Ring.h")).toEqual(["main.c", "Ring.h"]);
  expect(await filesOf("ring.h")).toEqual(["main.c", "ring.h"]);
});

test("what was read from a cache is what is read without one", async () => {
  const cache = new ProgramCache();
  await readFiles(files, cache);
  const edited = { ...files, "a.c": '#include "board.h"\n\n\nint wait = WAIT;\nint more = WAIT * 2;\n' };
  const cached = await readFiles(edited, cache);
  const fresh = await readFiles(edited);
  const places = (program: typeof fresh) =>
    program.units.map(({ typed }) =>
      typed.references.map(({ token }) => [token.text, token.file, token.start]),
    );
  expect(places(cached)).toEqual(places(fresh));
});
