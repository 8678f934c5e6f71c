import { expect, test } from "vitest";
import { randomSeed } from "../../random-seed.ts";
import { grammar } from "../../src-core/reader/typed/type-source.ts";
import { complaintOf, csmithCampaign, refusedByReader, summaryOf } from "./csmith-campaign.ts";

/*
 * Random programs of csmith, compiled by avr-gcc and run on a simulated chip, against the interpreter: the same
 * checksum over all their variables. To try others, set CSMITH_SEED; the test's name says which were tried.
 */
const count = Number(process.env.CSMITH_COUNT ?? 200);
const firstSeed = randomSeed("CSMITH_SEED", 3_000_300);

test(`CSMITH_SEED=${firstSeed}: the same checksums`, async () => {
  const complaints: string[] = [];
  const campaign = await csmithCampaign(await grammar(), { firstSeed, count }, (seed, comparison) => {
    const complaint = complaintOf(seed, comparison);
    if (complaint !== undefined) complaints.push(complaint);
  });
  const byReader = refusedByReader(campaign);
  process.stdout.write(
    `CSMITH_SEED=${firstSeed}: ${summaryOf(campaign)} (${byReader} not understood), ${campaign.drawnAnew.length} drawn anew\n`,
  );
  const wrong = complaints.filter((complaint) => complaint.includes(": mismatch: "));
  expect(wrong).toEqual([]);
  // Fewer than 2 in 100 may be refused.
  expect(complaints.length, complaints.join("\n")).toBeLessThan(Math.max(1, count / 50));
}, 1_800_000);
