import type { PlacedKind, PlaceSettingsOf, SettingsOf, StageKind } from '../stages/table.ts';

type SettingName<K extends StageKind> =
  keyof SettingsOf<K> | (K extends PlacedKind ? keyof PlaceSettingsOf<K> : never);

/** Lengths of a stage that its drawing has no dimension for, each with the reason; all others it has. */
export const NOT_DRAWN: { readonly [K in StageKind]?: { readonly [N in SettingName<K>]?: string } } = {
  arch: { arcLength: 'a length along the curve, by which a bent batten is cut: no straight line shows it' },
  groove: { blade: 'the width of a tool: it is drawn, and named beside the drawing' },
  trim: {
    horn: 'told in words below the door: it is sawn off by eye, along the rail',
    trimEachSide: 'written beside the edge, drawn larger than it is',
    trimEachEnd: 'written beside the edge, drawn larger than it is',
    trimLeft: 'written beside the edge, drawn larger than it is',
    trimRight: 'written beside the edge, drawn larger than it is',
    trimBottom: 'written beside the edge, drawn larger than it is',
    trimTop: 'written beside the edge, drawn larger than it is',
    finishedWidth: 'checked when the door is trimmed; drawn is what comes off the size as built',
    finishedHeight: 'checked when the door is trimmed; drawn is what comes off the size as built',
  },
};
