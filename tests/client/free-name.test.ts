import { expect, test } from "vitest";
import { freeName } from "../../client/free-name.ts";

const freeAmong = (...taken: readonly string[]) => freeName("sample", async (name) => taken.includes(name));

test("a name that is taken gets the first number that is free", async () => {
  expect(await freeAmong()).toBe("sample");
  expect(await freeAmong("sample")).toBe("sample-2");
  expect(await freeAmong("sample", "sample-2", "sample-4")).toBe("sample-3");
});

test("where it cannot be told, no name is free", async () => {
  const unknown = freeName("sample", () => Promise.reject(new Error("no permission")));
  await expect(unknown).rejects.toThrow("no permission");
});
