import { config } from 'zod';

/**
 * Every entry of the screens imports this first: before a schema is made, zod is told to make no code from text. The screens'
 * policy forbids it, so nothing is lost; but zod would try it once, and a browser may report that as an error.
 */
config({ jitless: true });
