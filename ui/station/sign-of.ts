/** The sign that stands behind a setting's number: an angle is in degrees, lengths carry their measure elsewhere. */
export function signOf(setting: string): string {
  return setting === 'tilt' ? '°' : '';
}
