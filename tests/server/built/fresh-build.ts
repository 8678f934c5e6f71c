import { execFileSync } from "node:child_process";

/** Tests of the built server must never meet an old one. */
export default function setup(): void {
  execFileSync(process.execPath, ["esbuild.config.mjs"], { stdio: ["ignore", "inherit", "inherit"] });
}
