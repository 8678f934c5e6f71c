import type { TrialResult } from "../../../src-core/service/service.ts";
import type { TrialChoices } from "../../../src-core/trial-details.ts";
import type { Listed } from "../with-listings.ts";
import type { CancelFlag } from "./cancel-flag.ts";
import type { Texts } from "./texts.ts";

/**
 * What passes between the language server and the worker that tries firmware out: plain data, one request at a
 * time, and what is found out first is told first.
 */

export interface TrialRequest extends Listed {
  /** Its id, at which the worker's own service finds it too. */
  readonly project: string;
  /** All files that the server read for it. What else is asked for, such as folders, the worker reads itself. */
  readonly texts: Texts;
  /** What is to be tried besides. */
  readonly choices: TrialChoices;
  /** Undefined where no memory can be shared; the worker is ended then. */
  readonly cancel: CancelFlag | undefined;
}

export type TrialAnswer =
  /** `isLast` where there is no more to come for the request. */
  | { readonly kind: "tried"; readonly result: TrialResult; readonly isLast: boolean }
  | { readonly kind: "cancelled" }
  /** `why` fits behind "the firmware could not be tried:". */
  | { readonly kind: "failed"; readonly why: string };
