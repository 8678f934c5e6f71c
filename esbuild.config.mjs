import { execFileSync } from "node:child_process";
import { chmod, copyFile, mkdir, readdir, writeFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { dirname, join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import * as esbuild from "esbuild";
import { thirdPartyNotices } from "./third-party-notices.mjs";

const root = dirname(fileURLToPath(import.meta.url));
const dist = join(root, "dist");
const require = createRequire(import.meta.url);

/** Some bundled libraries are CommonJS and ask for Node's own modules with `require`. */
const requireInModules =
  'import { createRequire as __createRequire } from "node:module"; const require = __createRequire(import.meta.url);';

/** @type {import("esbuild").BuildOptions} */
const shared = {
  absWorkingDir: root,
  bundle: true,
  platform: "node",
  // jsonc-parser's "main" is UMD, whose inner requires a bundle cannot follow.
  mainFields: ["module", "main"],
  target: "node20",
  sourcemap: "linked",
  sourcesContent: false,
  minifySyntax: true,
  minifyWhitespace: true,
  // thirdPartyNotices writes the licences of all that is bundled.
  legalComments: "none",
  metafile: true,
  logLevel: "warning",
};

/**
 * The extension is small and loads this when the first server is wanted.
 * @type {import("esbuild").Plugin}
 */
const clientLibraryBeside = {
  name: "client-library",
  setup(build) {
    build.onResolve({ filter: /\/client-library\.ts$/ }, ({ kind }) =>
      kind === "dynamic-import" ? { path: "./client-library.cjs", external: true } : undefined,
    );
  },
};

/** @type {import("esbuild").BuildOptions[]} */
const bundles = [
  {
    entryPoints: { edgewise: "server/main.ts" },
    outdir: dist,
    format: "esm",
    banner: { js: `#!/usr/bin/env node\n${requireInModules}` },
  },
  {
    entryPoints: { extension: "client/node/extension.ts", "client-library": "client/node/client-library.ts" },
    outdir: dist,
    format: "cjs",
    outExtension: { ".js": ".cjs" },
    external: ["vscode"],
    plugins: [clientLibraryBeside],
    // What an extension loads later must come by the same `require`, or it would not find `vscode`.
    supported: { "dynamic-import": false },
  },
  {
    entryPoints: ["ribbon", "matrix"].flatMap((view) =>
      ["ts", "css"].map((kind) => ({ in: `client/views/${view}/${view}.${kind}`, out: `views/${view}` })),
    ),
    outdir: dist,
    platform: "browser",
    format: "iife",
    // The page's own security policy lets nothing else be loaded.
    sourcemap: false,
  },
  {
    // One file: an extension in a browser can load no other.
    entryPoints: { "web/extension": "client/web/extension.ts" },
    outdir: dist,
    platform: "browser",
    format: "cjs",
    outExtension: { ".js": ".cjs" },
    conditions: ["browser"],
    external: ["vscode"],
    sourcemap: false,
  },
  {
    entryPoints: { "web/server": "server/web/main.ts" },
    outdir: dist,
    platform: "browser",
    // Workers that are started from a blob are classic scripts.
    format: "iife",
    conditions: ["browser"],
    // The grammar's runtime asks where it lies, though it is handed its file, and for Node, which leads to `require`.
    define: { "import.meta.url": '"file:///"', process: "undefined" },
    sourcemap: false,
  },
  {
    // Run in the checkout only; not part of the extension.
    entryPoints: {
      demo: "server/demo/demo.ts",
      benchmark: "tests/bench/benchmark.ts",
      "csmith-explorer": "tests/oracle/interpreter/csmith-explorer.ts",
      "write-schema": "server/schema/write-schema.ts",
      "write-docs": "server/docs/write-docs.ts",
    },
    outdir: join(dist, "development"),
    format: "esm",
    banner: { js: requireInModules },
  },
];

const copies = [
  [require.resolve("web-tree-sitter/web-tree-sitter.wasm"), "web-tree-sitter.wasm"],
  [require.resolve("tree-sitter-cpp/tree-sitter-cpp.wasm"), "tree-sitter-cpp.wasm"],
];

await mkdir(join(dist, "development"), { recursive: true });
const inputs = copies.map(([from]) => relative(root, from));
for (const bundle of bundles) {
  const { metafile } = await esbuild.build({ ...shared, ...bundle });
  inputs.push(...Object.keys(metafile.inputs));
}
const sample = join(root, "sample-workspace");
const inSample = await readdir(sample, { recursive: true, withFileTypes: true });
const sampleFiles = inSample
  .filter((entry) => entry.isFile())
  .map(({ parentPath, name }) => relative(sample, join(parentPath, name)).replaceAll("\\", "/"));
await writeFile(join(dist, "sample-files.json"), `${JSON.stringify(sampleFiles.sort(), null, 1)}\n`);
await writeFile(join(dist, "third-party-notices.txt"), thirdPartyNotices(root, inputs));
for (const [from, name] of copies) {
  await copyFile(from, join(dist, name));
  await copyFile(from, join(dist, "development", name));
}
const schemaWriter = join(dist, "development", "write-schema.js");
execFileSync(process.execPath, [schemaWriter, join(dist, "edgewise.schema.json")], { stdio: "inherit" });
await chmod(join(dist, "edgewise.js"), 0o755);
