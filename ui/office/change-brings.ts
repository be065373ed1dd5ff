import type { ChangeBrings, JobChanged } from '#core/api/jobs-api.ts';
import { counted } from '#core/words/say.ts';

/** Does a change touch what is cut, finished or marked already, so that it is asked about before it is done? */
export function asksFirst(brings: ChangeBrings & Partial<Pick<JobChanged, 'lost' | 'cutOtherWay'>>): boolean {
  const { disagreeing, finished, lost = [], cutOtherWay = 0 } = brings;
  return disagreeing + finished.length + lost.length + cutOtherWay > 0;
}

/** That stickers are to be printed again after a change; nothing where there are none. */
export function stickersAgain({ outdated }: Pick<ChangeBrings, 'outdated'>): string {
  return outdated === 0 ? '' : ` ${counted('print.again', outdated)}`;
}
