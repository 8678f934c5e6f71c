/**
 * The seed of a suite that makes random input. A suite gives the same answer each time it runs, so the seed is a
 * fixed number; the environment variable of that name tries another.
 * @throws where the variable holds no whole number.
 */
export function randomSeed(variable: string, byDefault: number): number {
  const text = process.env[variable];
  if (text === undefined) return byDefault;
  if (!/^\d+$/.test(text)) throw new Error(`${variable}=${text} is no seed; give a whole number.`);
  return Number(text);
}
