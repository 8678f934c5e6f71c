import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

const isLicence = /^(licen[cs]e|notice|thirdpartynotices)(\.\w+)?$/i;

/**
 * Licences of the packages that bundles carry, which have to go where the bundles go. `inputs` are paths of bundled
 * files from `root`; throws for a package without a licence file.
 * @param {string} root
 * @param {Iterable<string>} inputs
 */
export function thirdPartyNotices(root, inputs) {
  const folders = new Set([...inputs].flatMap((file) => packageFolder(file) ?? []));
  return [...folders]
    .sort()
    .map((folder) => noticeOf(root, folder))
    .join("\n");
}

/** @param {string} file */
function packageFolder(file) {
  return /^(?:.*\/)?node_modules\/(?:@[^/]+\/)?[^/]+/.exec(file.replaceAll("\\", "/"))?.[0];
}

/**
 * @param {string} root
 * @param {string} folder
 */
function noticeOf(root, folder) {
  const { name, version } = JSON.parse(readFileSync(join(root, folder, "package.json"), "utf8"));
  const files = readdirSync(join(root, folder)).filter((file) => isLicence.test(file));
  if (files.length === 0) throw new Error(`${folder} has no licence file, so it must not be bundled`);
  const texts = files.map((file) => readFileSync(join(root, folder, file), "utf8").trim());
  return [`${name} ${version}`, "-".repeat(60), ...texts, ""].join("\n");
}
