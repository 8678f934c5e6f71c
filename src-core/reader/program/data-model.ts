import type { Chip } from "../../model/chips/chip.ts";
import { avrModel, ilp32Model } from "../types/data-models.ts";
import type { DataModel } from "../types/types.ts";

/**
 * The sizes of types on a chip. Where no compiler is modelled for it, and where the chip is not known, they are
 * those of AVR: the chip's `dataModel` tells whoever must not rely on that.
 */
export function dataModelOf(chip: Chip | undefined): DataModel {
  return chip?.dataModel === "ilp32" ? ilp32Model : avrModel;
}
