import { pageOfRule } from "../src-core/rule-description.ts";

/** What lies beside the programs, in a checkout as in an installed package. */
export class PackageFiles {
  readonly #root: URL;

  /** The package's folder, with a slash at its end. */
  constructor(root: URL) {
    this.#root = root;
  }

  /** The URI of a rule's page. */
  pageUriOf(rule: string): string {
    return new URL(pageOfRule(rule), this.#root).href;
  }
}
