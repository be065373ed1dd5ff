import type { Language } from '#core/words/languages.ts';
import type { Task, TaskKind, Tasks } from './tasks.ts';

/** What a thread that works is told: a task, in the language in which papers are; or that the next piece may come. */
export type Told =
  { readonly task: Task; readonly number: number; readonly spoken: Language } | { readonly more: number };

/** What it says of the task of this number. */
export type Said =
  | { readonly number: number; readonly piece: Uint8Array }
  | { readonly number: number; readonly made: number; readonly of: number }
  | { readonly number: number; readonly done: Tasks[TaskKind]['gives'] }
  | { readonly number: number; readonly failed: string };
