import type { PlaceName } from '#core/plan/place-name.ts';
import type { Allowed, SettingValue } from '#core/plan/plan.ts';
import type { Setup } from './setup-shown.ts';

/** A sheet over a setup that is there to be read. */
export type Sheets = 'how' | 'cut' | 'cautions' | 'parts';

/** What is told over a setup, of this one only: another that comes up, or its next place, takes it away. */
export type ToldOver = { readonly of: Setup } & (
  | { readonly what: Sheets }
  | {
      readonly what: 'why';
      readonly name: string;
      readonly value: SettingValue;
      readonly at: PlaceName | undefined;
      readonly from: string | null;
      readonly reason: string;
      readonly allow: Allowed | undefined;
    }
);

/** Opens a sheet over the setup. */
export type Tell = (what: Sheets) => void;
/** Says why a setting, of a place where it has several, is what it is. */
export type Explain = (name: string, value: SettingValue, at?: PlaceName) => void;

/** A sheet that lies over a station's screen. */
export type SheetOver = 'find' | 'people' | 'spoil' | 'survey' | 'camera';
