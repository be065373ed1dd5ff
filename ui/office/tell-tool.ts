import type { PrintedFault } from '#core/fields/fault.ts';
import { hasWords, say } from '#core/words/say.ts';
import { tellLength } from '../shared/tell-length.ts';
import type { ShopDraft } from './shop-draft.ts';

/** A fault of the shop's tools as the office tells it: by the tool's label, in the shop's words. */
export interface ToldTool {
  readonly label: string;
  readonly words: string;
}

/** What the hub says is wrong with a tool, "profile.chisels[1]" or, of those in the other units, "otherProfile.chisels[1]", told of what was typed for it. */
export function tellTool(
  { path, code, message }: PrintedFault,
  draft: Pick<ShopDraft, 'tools' | 'units'>,
): ToldTool {
  const read = /^(profile|otherProfile)\.([\w.]+)(?:\[(\d+)\])?$/.exec(path);
  const units = (read?.[1] === 'profile') === (draft.units === 'in') ? 'in' : 'mm';
  const tool = read?.[2] ?? '';
  const key = `office.tool.${tool}`;
  const typed = Object.entries(draft.tools[units]).find(([name]) => name === tool)?.[1] ?? '';
  const one = read?.[3] === undefined ? typed : (typed.split(',')[Number(read[3])] ?? '');
  const words =
    code.startsWith('length-') || code === 'required'
      ? (tellLength(one, units) ?? message)
      : code === 'zero'
        ? say('told.zero')
        : code === 'negative'
          ? say('told.negative')
          : message;
  if (tool === 'moisture') return { label: say('office.shop.moisture'), words };
  const label = hasWords(key)
    ? say('office.tool-in', { tool: say(key), units: say(`office.units.${units}`) })
    : path;
  return { label, words };
}
