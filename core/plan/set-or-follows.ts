/**
 * What of each kind of stage only follows from what is set: read to check the work by, never set on the machine. All its
 * other settings are set.
 */
export const FOLLOWS: Readonly<Record<string, readonly string[]>> = {
  bead: ['fillet'],
  groove: ['width'],
  mortise: ['length', 'plunges'],
  mitre: ['shoulderLine'],
  notch: ['length'],
  strip: ['lag'],
  cheek: ['thickness'],
  tenon: ['width'],
  arch: ['chord', 'rise', 'arcLength'],
  cutout: ['width', 'height', 'chord', 'rise', 'flat'],
  raise: ['tongue'],
  trim: ['finishedWidth', 'finishedHeight'],
};

/** Is this number set at the stage, or does it only follow from others that are? */
export function isSet(stage: string, setting: string): boolean {
  return FOLLOWS[stageKind(stage)]?.includes(setting) !== true;
}

/** Stages that are set alike have one name: "mitre-top" is a mitre, "notch-mid-1" a notch. */
function stageKind(stage: string): string {
  return stage.split('-')[0] ?? stage;
}
