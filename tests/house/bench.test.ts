import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { serverOptions } from "../../client/node/server-options.ts";

it("the benchmark runs with the options of the language server's process", () => {
  const { scripts }: { scripts: Readonly<Record<string, string>> } = JSON.parse(
    readFileSync("package.json", "utf8"),
  );
  expect(scripts.bench).toContain(`node ${serverOptions.join(" ")} dist/`);
});
