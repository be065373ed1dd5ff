import { writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { planFile } from '#core/plan/plan-file.ts';
import { stickersPdf } from '#labels/stickers-pdf.ts';
import demo from '#main/demo/demo-job.json' with { type: 'json' };

const planned = planFile(demo);
if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
const plan = planned.value;

for (const stock of ['letter-3x10', 'roll-2x1', 'a4-3x8', 'roll-3x1', 'roll-4x2'])
  test(`every part of the demo job gets a sticker on ${stock}, byte for byte the same twice`, async () => {
    const first = await stickersPdf(plan, { stock });
    const second = await stickersPdf(plan, { stock });
    if (!first.ok || !second.ok) throw new Error(JSON.stringify(first));
    expect(first.parts).toBe(plan.doors.reduce((sum, door) => sum + door.parts.length, 0));
    expect(Buffer.from(first.pdf).equals(Buffer.from(second.pdf))).toBe(true);
    if (process.env.KEEP_PDF !== undefined) writeFileSync(`${process.env.KEEP_PDF}/${stock}.pdf`, first.pdf);
    console.log(stock, first.stickers, first.doubled.length);
  });
