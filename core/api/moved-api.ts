import { z } from 'zod';

const token = z.string().max(60);

/** GET /moved answers this: where else the hub is got, and by what the page that asks could send there. */
export const movedAnswer = z.object({
  /** Every address at which screens are served, the one by name first: "https://planer-pc.local:7518". */
  addresses: z.array(z.string()),
  /** By what the hub knows the device that asks; null at its own machine. */
  device: z.string().nullable(),
  /** Was a token given to the page at this address? */
  sending: z.boolean(),
});

/** POST /moved/token answers this. */
export const movedToken = z.object({ device: z.string(), token });

/** POST /moved/proof takes this: which device asks, and 32 random bytes of its own (base64url). */
export const movedChallenge = z.strictObject({
  device: z.string().max(40),
  nonce: z.string().regex(/^[\w-]{43}$/),
});

/** POST /moved/proof answers this. */
export const movedProof = z.object({ proof: z.string() });

/** POST /moved/leave answers this: what the page shows at the address that it goes to, once. */
export const movedLeave = z.object({ token });

/** POST /moved/arrive takes this: what the page was given before it left, and what its service worker answered. */
export const movedArrival = z.strictObject({ token, ask: z.string().max(100), proof: z.string().max(100) });
