import type { Survey } from './survey-plan.ts';

/** What was measured at openings and is not saved yet, for as long as this page is open: a sheet that is put away loses nothing. */
export class SurveyDrafts {
  readonly #drafts = new Map<string, Survey>();

  /** What was last entered for this door and not saved; null where there is none. */
  of(job: string, door: string): Survey | null {
    return this.#drafts.get(keyOf(job, door)) ?? null;
  }

  entered(job: string, door: string, survey: Survey): void {
    this.#drafts.set(keyOf(job, door), survey);
  }

  saved(job: string, door: string): void {
    this.#drafts.delete(keyOf(job, door));
  }
}

export const surveyDrafts = new SurveyDrafts();

function keyOf(job: string, door: string): string {
  return `${job}\n${door}`;
}
