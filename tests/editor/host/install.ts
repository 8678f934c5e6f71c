import { execFileSync } from "node:child_process";
import { existsSync, mkdirSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { homedir } from "node:os";
import { delimiter, join } from "node:path";

/** A real editor for tests: VS Code served to a browser by the npm package `code-server`, outside the checkout. */
export interface EditorHost {
  /** Node of the version that the package wants. */
  readonly node: string;
  /** The package's main program. */
  readonly entry: string;
}

const serverVersion = "4.139.1";
const nodeVersion = "24";

/**
 * Installs the editor into the user's cache folder unless it is there; about two minutes and 700 MB. Needs a C++
 * compiler, make, python3, pkg-config and the headers of libkrb5, libsecret, libx11 and libxkbfile.
 */
export function installEditorHost(): EditorHost {
  const cache = process.env.EDGEWISE_EDITOR_CACHE ?? join(homedir(), ".cache", "edgewise-editor");
  const folder = join(cache, `code-server-${serverVersion}`);
  const nodeFolder = join(cache, `node-${nodeVersion}`);
  const host = {
    node: join(nodeFolder, "node_modules", ".bin", "node"),
    entry: join(folder, "package", "out", "node", "entry.js"),
  };
  if (!existsSync(host.node)) installNode(nodeFolder);
  if (!existsSync(join(folder, "complete"))) installServer(folder, join(nodeFolder, "node_modules", ".bin"));
  return host;
}

function installNode(folder: string): void {
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, "package.json"), '{"private":true}\n');
  run("npm", ["install", `node@${nodeVersion}`, "--no-audit", "--no-fund"], folder);
}

function installServer(folder: string, nodeBin: string): void {
  const unfinished = `${folder}.unfinished`;
  rmSync(unfinished, { recursive: true, force: true });
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(unfinished, { recursive: true });
  run("npm", ["pack", `code-server@${serverVersion}`], unfinished);
  run("tar", ["-xzf", `code-server-${serverVersion}.tgz`], unfinished);
  const inside = join(unfinished, "package");
  const env = { ...process.env, PATH: `${nodeBin}${delimiter}${process.env.PATH ?? ""}` };
  run("npm", ["install", "--omit=dev", "--no-audit", "--no-fund"], inside, env);
  run("npm", ["rebuild", "argon2"], inside, env);
  writeFileSync(join(unfinished, "complete"), "");
  renameSync(unfinished, folder);
}

function run(command: string, arguments_: readonly string[], folder: string, env = process.env): void {
  execFileSync(command, arguments_, {
    cwd: folder,
    env: withoutNpmSettings(env),
    stdio: ["ignore", "ignore", "inherit"],
  });
}

/** An npm script hands its own settings down; `ignore-scripts` of this checkout must not reach the editor's install. */
function withoutNpmSettings(env: NodeJS.ProcessEnv): NodeJS.ProcessEnv {
  return Object.fromEntries(Object.entries(env).filter(([name]) => !/^npm_/i.test(name)));
}
