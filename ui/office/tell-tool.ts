import type { Fault } from '#core/plan/plan.ts';
import { hasWords, say } from '#core/words/say.ts';
import { tellLength } from '../shared/tell-length.ts';
import type { ShopDraft } from './shop-draft.ts';

/** A fault of the shop's tools as the office tells it: by the tool's label, in the shop's words. */
export interface ToldTool {
  readonly label: string;
  readonly words: string;
}

/** What the hub says is wrong with a tool, "profile.chisels[1]", told of what was typed for it. */
export function tellTool(
  { path, code, message }: Fault,
  draft: Pick<ShopDraft, 'tools' | 'units'>,
): ToldTool {
  const read = /^profile\.([\w.]+)(?:\[(\d+)\])?$/.exec(path);
  const tool = read?.[1] ?? '';
  const key = `office.tool.${tool}`;
  const typed = Object.entries(draft.tools).find(([name]) => name === tool)?.[1] ?? '';
  const one = read?.[2] === undefined ? typed : (typed.split(',')[Number(read[2])] ?? '');
  const words =
    code.startsWith('length-') || code === 'required'
      ? (tellLength(one, draft.units) ?? message)
      : code === 'zero'
        ? say('told.zero')
        : code === 'negative'
          ? say('told.negative')
          : message;
  return { label: hasWords(key) ? say(key) : path, words };
}
