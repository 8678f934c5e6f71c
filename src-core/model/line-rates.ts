/**
 * Rates that serial lines are run at, in baud: those of the UBRR tables in the AVR datasheets (ATmega48/88/168 2545D,
 * Tables 81 to 84), the slower ones of PC serial ports, and those of other common links (common practice, no source).
 */
const LINE_RATES: readonly number[] = [
  300, 600, 1200, 2400, 4800, 9600, 14_400, 19_200, 28_800, 31_250, 38_400, 57_600, 62_500, 74_880, 76_800,
  100_000, 115_200, 125_000, 230_400, 250_000, 500_000, 1_000_000,
];

/** The rate of `among` that is nearest to `baud` by ratio. */
export function nearestRate(baud: number, among: readonly number[] = LINE_RATES): number | undefined {
  let best: number | undefined;
  for (const rate of among) {
    if (best === undefined || distance(rate, baud) < distance(best, baud)) best = rate;
  }
  return best;
}

function distance(a: number, b: number): number {
  return Math.abs(Math.log(a / b));
}
