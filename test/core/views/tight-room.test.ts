import { expect, test } from 'vitest';
import { layOut } from '#core/drawing/layout.ts';
import { planFile } from '#core/planning/plan-file.ts';
import { setupView } from '#core/views/setup-view.ts';
import { LANGUAGES } from '#core/words/languages.ts';
import { speak } from '#core/words/say.ts';
import { everyStageJob } from '../../e2e/every-stage-job.ts';
import { textsOf } from '../drawing/strokes.ts';

/** The room that a set-up's drawing has at 1280 × 800 where longer words and more numbers are told below it. */
const TIGHT = { width: 560, height: 280, text: 18 } as const;

test.each(LANGUAGES)(
  'in %s no word or value of a panel’s head stands on another where its drawing is small',
  (language) => {
    const wrong: string[] = [];
    let counted = 0;
    speak(language);
    for (const units of ['in', 'mm'] as const) {
      const plan = planFile(everyStageJob(units));
      if (!plan.ok) throw new Error(JSON.stringify(plan.faults));
      for (const part of plan.value.doors.flatMap(({ parts }) => parts))
        for (const stage of part.stages.filter((each) => each.stage === 'cutout')) {
          const texts = textsOf(layOut(setupView(part, stage, units), TIGHT));
          for (const [k, a] of texts.entries()) {
            counted += 1;
            for (const b of texts.slice(k + 1))
              if (
                (a.name === undefined || a.name !== b.name) &&
                Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1 &&
                Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 1
              )
                wrong.push(`${units}: ${a.role} “${a.text}” on ${b.role} “${b.text}”`);
          }
        }
    }
    speak('en');
    expect(counted).toBeGreaterThan(20);
    expect(wrong).toEqual([]);
  },
);
