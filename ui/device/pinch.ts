/**
 * On a device in the shop's network two fingers may make a page larger, for whoever does not see well. The full screen at the
 * shop computer stays as it is: nobody there would know how to make it small again.
 */
export function letPinch({ classList }: Element, protocol: string): void {
  if (protocol === 'https:') classList.add('pinch');
}
