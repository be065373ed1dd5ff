import { say } from '#core/words/say.ts';
import { trustLost } from '../offline/trust-lost.svelte.ts';
import { screenShown } from './screen-shown.svelte.ts';

/** What is said while the hub does not answer, and where to turn once it is known, or likely, that this device trusts its certificate no more. */
export function awayWords(): string {
  const address = screenShown.trust;
  if (trustLost.lost)
    return address === ''
      ? `${say('untrusted.title')}. ${say('untrusted.what')}`
      : say('ui.hub-away.untrusted', { address });
  const perhaps = trustLost.perhaps && address !== '';
  return [say('ui.hub-away'), ...(perhaps ? [say('ui.hub-away.trust', { address })] : [])].join(' ');
}
