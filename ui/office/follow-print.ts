import type { PrintState } from '#core/api/prints-api.ts';
import { ask } from '../hub/client.ts';

/** How often a print on its way is asked after, in milliseconds. */
const PACE = 400;

/** Follows a print until it is out of the printer or is not; tells every state of it, and gives the last. */
export async function followPrint(id: string, tell: (state: PrintState) => void): Promise<PrintState> {
  for (;;) {
    const answer = await ask('GET /prints/:id', { params: { id } });
    const state: PrintState | null =
      answer.kind === 'ok'
        ? answer.value
        : answer.kind === 'refused'
          ? { state: 'failed', made: 0, of: 0, message: answer.refusal.message }
          : null;
    if (state !== null) {
      tell(state);
      if (state.state !== 'making' && state.state !== 'sending') return state;
    }
    await new Promise((later) => setTimeout(later, PACE));
  }
}
