/** How deep includes may nest. */
export const INCLUDE_DEPTH = 200;
/** How many times files may be included in one unit. */
export const INCLUSIONS = 20_000;
/** How deep macro arguments may nest, `f(f(f(...)))`: well below what the engine's call stack bears. */
export const ARGUMENT_DEPTH = 200;
/** How many tokens a unit's macro expansions may move, pasted and stringified text counted by length. */
export const EXPANDED_TOKENS = 1_000_000;
/** How many tokens a unit may have in all, included files counted each time. */
export const UNIT_TOKENS = 4_000_000;
/** How many notes of what was not understood a unit gives. */
export const PROBLEMS = 500;
