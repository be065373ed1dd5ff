import { type Aimed, attack, type AttackName } from './attacks.ts';

/** A machine that means ill, in a process of its own: does what it is told, and says what came of it. */
process.on('message', ({ name, aimed }: { readonly name: AttackName; readonly aimed: Aimed }) => {
  void attack(name, aimed).then((came) => process.send?.(came));
});
process.on('disconnect', () => process.exit(0));
// What is done to its own connections is no matter.
process.on('uncaughtException', () => undefined);
