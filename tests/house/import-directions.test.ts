import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { describe, expect, test } from "vitest";

/** Folder of the importing file, and what it imports. */
type Import = readonly [folder: string, from: string];

const refused: readonly Import[] = [
  ["client/status", "../../src-core/finding.ts"],
  ["client", "../server/main.ts"],
  ["server", "../client/extension.ts"],
  ["server", "vscode"],
  ["server", "../src-core/checks/registry.ts"],
  ["server", "../src-core/reader/tokens.ts"],
  ["src-core/reader", "node:fs"],
  ["src-core/reader", "fs"],
  ["src-core/reader", "vscode-languageserver/node"],
  ["src-core/reader", "../../server/main.ts"],
  ["src-core/facts/ps2", "../../checks/registry.ts"],
  ["src-core/explain", "../present/text.ts"],
  ["src-core/reader", "../service/service.ts"],
  ["src-core/service", "../present/text.ts"],
  ["src-core/service", "../checks/ps2/command-unknown.ts"],
  ["src-core/model/chips", "../../reader/tokens.ts"],
  ["src-core/model/chips", "../../reports/report-trial.ts"],
];

const allowed: readonly Import[] = [
  ["client", "vscode-languageclient/node"],
  ["client", "../server/language-server/client-messages/status.ts"],
  ["server", "node:fs"],
  ["server", "../src-core/service/service.ts"],
  ["server", "../src-core/present/text/text.ts"],
  ["src-core/reader", "../model/quantities.ts"],
  ["src-core/reader", "web-tree-sitter"],
  ["src-core/bench", "avr8js"],
  ["src-core/service", "../checks/registry.ts"],
  ["src-core/checks/ps2", "../rule.ts"],
  ["src-core/model/chips", "../../finding.ts"],
];

/** Lints one file per import in a tree laid out like this one; gives the imports that were refused. */
function lint(imports: readonly Import[]): ReadonlySet<string> {
  const tree = mkdtempSync(join(tmpdir(), "edgewise-lint-"));
  try {
    const settings: object = JSON.parse(readFileSync("biome.json", "utf8"));
    writeFileSync(join(tree, "biome.json"), JSON.stringify({ ...settings, vcs: { enabled: false } }));
    for (const [index, [folder, from]] of imports.entries()) {
      const file = join(tree, folder, `import-${index}.ts`);
      mkdirSync(dirname(file), { recursive: true });
      writeFileSync(file, `import { thing } from "${from}";\nexport const it = thing;\n`);
    }
    const biome = resolve("node_modules/@biomejs/biome/bin/biome");
    const arguments_ = [
      biome,
      "lint",
      "--reporter=github",
      "--only=style/noRestrictedImports",
      "--max-diagnostics=none",
    ];
    const { stdout } = spawnSync(process.execPath, arguments_, { cwd: tree, encoding: "utf8" });
    const numbers = [...stdout.matchAll(/noRestrictedImports.*?import-(\d+)\.ts/g)].map(([, number]) =>
      Number(number),
    );
    return new Set(imports.filter((_, index) => numbers.includes(index)).map(String));
  } finally {
    rmSync(tree, { recursive: true });
  }
}

describe("the linter enforces the import directions", () => {
  const offences = lint([...refused, ...allowed]);
  const isRefused = (...one: Import) => offences.has(String(one));

  test.each(refused)("%s must not import %s", (folder, from) => {
    expect(isRefused(folder, from)).toBe(true);
  });

  test.each(allowed)("%s may import %s", (folder, from) => {
    expect(isRefused(folder, from)).toBe(false);
  });
});
