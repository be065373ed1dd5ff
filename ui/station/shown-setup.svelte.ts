import { hingeOf } from '#core/job/hinge-of.ts';
import { fineRounding, showIn, type Shown, shownText } from '#core/length/reading.ts';
import { NO_BREAK } from '#core/length/unbroken.ts';
import { locate } from '#core/marks/live-plan.ts';
import { disagreements } from '#core/measured/disagreements.ts';
import { isShortPart } from '#core/plan/short-part.ts';
import { isOfPiece, isSet } from '#core/plan/set-or-follows.ts';
import type { PlaceName } from '#core/plan/place-name.ts';
import type { Place, PlanStage, Settings, SettingValue } from '#core/plan/plan.ts';
import { isByHand } from '#core/queue/proved.ts';
import { isDoorStage, stageIs } from '#core/stages/stage-id.ts';
import { cautionsOf } from '#core/telling/cautions-of.ts';
import { howTo } from '#core/telling/how-to.ts';
import { doorSetup } from '#core/views/door-setup.ts';
import { setupView } from '#core/views/setup-view.ts';
import { say } from '#core/words/say.ts';
import { doorNow } from '../fitting/door-now.ts';
import { hasGap } from '../fitting/edges.ts';
import { live } from '../hub/live.svelte.ts';
import { shop } from '../hub/shop.svelte.ts';
import { measure } from '../shared/measure.svelte.ts';
import { settableHere } from '../shared/settable-here.ts';
import type { Setup } from './setup-shown.ts';

/** A setup as this screen reads it: everything in the numbers that machines are set to. Why they are so is asked of the exact ones. */
export class ShownSetup {
  readonly #of: () => Setup;

  constructor(of: () => Setup) {
    this.#of = of;
  }

  get setup(): Setup {
    return this.#of();
  }
  get part() {
    return this.setup.found.part;
  }
  get door() {
    return this.setup.found.door;
  }
  get stage(): PlanStage {
    return this.setup.stage;
  }
  /** The place that is worked on. */
  get place(): PlaceName | undefined {
    return this.setup.place;
  }
  get places(): readonly Place[] {
    return this.stage.places ?? [];
  }
  get units() {
    return this.setup.job.plan.units;
  }
  /** The unit of what is read here, as it is said. */
  get unit(): string {
    return say(`ui.unit.${measure.of(this.units)}`);
  }
  /** To what the numbers here are settable. */
  get step() {
    return this.#here.step;
  }

  /** Is it the door as a whole that is worked? */
  readonly whole = $derived.by(() => isDoorStage(this.stage.stage));
  readonly short = $derived.by(
    () => !this.whole && !isByHand(this.stage.station) && isShortPart(this.part, this.units),
  );
  /** With the opening surveyed the amounts of the survey stand in place of those of a square opening. */
  readonly surveyed = $derived.by(() => (this.#fits ? doorNow(this.setup).values.survey : undefined));
  readonly settings = $derived.by(() =>
    Object.entries(this.stage.settings).filter(
      ([name]) =>
        this.surveyed === undefined || (name === 'horn' && !hasGap(this.surveyed.takeOff, this.units)),
    ),
  );
  /** What is made on the machine stands large on the right, what only follows from it small under the drawing. */
  readonly made = $derived.by(() => this.settings.filter(([name]) => isSet(this.stage.stage, name)));
  readonly following = $derived.by(() => this.settings.filter(([name]) => !isSet(this.stage.stage, name)));
  /** How the piece lies for the place that is worked on: beside the drawing, which shows it. */
  readonly lies = $derived.by(() => {
    const lying = this.places.find(({ at }) => at === this.place);
    return Object.entries(lying?.settings ?? {}).filter(([name]) => isOfPiece(this.stage.stage, name));
  });

  readonly #fits = $derived.by(() => stageIs(this.stage.stage, 'fits'));
  readonly #here = $derived.by(() => settableHere(this.#fits ? doorNow(this.setup) : this.door, this.units));
  readonly partShown = $derived.by(
    () => this.#here.door.parts.find((each) => each.part === this.part.part) ?? this.part,
  );
  readonly stageShown = $derived.by(
    () =>
      [...this.partShown.stages, ...this.#here.door.stages].find((each) => each.stage === this.stage.stage) ??
      this.stage,
  );
  /** What was cut of this part, or of the door that is put together or fitted, by other settings than it has now. */
  readonly cut = $derived.by(() => {
    const { setup, door, whole, part } = this;
    const { progress, asMarked, index } = live.jobs.get(setup.job.line.id) ?? setup.job;
    if (asMarked.length === 0) return [];
    const now = locate(index, progress, setup.code)?.door ?? door;
    return disagreements([now], progress, asMarked).filter((each) => whole || each.code === part.code);
  });
  /** How the work goes at the place that is shown. */
  readonly how = $derived.by(() =>
    howTo(this.stageShown, {
      ...(this.whole ? {} : { part: this.partShown }),
      step: this.step,
      ...(this.place === undefined ? {} : { place: this.place }),
      read: (value) => this.withUnit(value),
    }),
  );
  /** What can hurt at it, the gravest first. */
  readonly dangers = $derived.by(() =>
    cautionsOf(this.stageShown, {
      ...(this.whole ? {} : { part: this.part }),
      lengths: { units: this.step.units, read: (value) => this.withUnit(value) },
    }),
  );
  readonly drawing = $derived.by(() =>
    this.whole
      ? doorSetup(this.#here.door, this.stage, this.step.units, {
          reading: (value) => this.reading(value),
          hinge: hingeOf(this.setup.job.file, this.door.mark),
        })
      : setupView(this.partShown, this.stageShown, this.step.units, this.place, this.step),
  );

  /** A setting as it is set; undefined where the settable plan lacks it. */
  settable(name: string, at?: PlaceName): SettingValue | undefined {
    const { settings, places } = this.stageShown;
    const of: Settings | undefined =
      at === undefined ? settings : places?.find((each) => each.at === at)?.settings;
    return of?.[name];
  }
  /** A settable number as it is read in the measure chosen here. */
  reading(value: SettingValue): Shown {
    return showIn(value, this.step.units, measure.of(this.units), fineRounding(shop.rounding));
  }
  /** The same in a sentence. */
  withUnit(value: SettingValue): string {
    return `${shownText(this.reading(value))}${NO_BREAK}${this.unit}`;
  }
}
