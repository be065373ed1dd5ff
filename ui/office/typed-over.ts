/** The key of a row on the screen says nothing of what stands in it. */
const asText = (value: unknown) =>
  JSON.stringify(value, (name, each: unknown) => (name === 'key' ? null : each));

/**
 * A form's fields after newer ones came from the hub: what was typed since it was filled stays, every other field is as it
 * came. Fields in a table count one by one, a list as a whole.
 */
export function typedOver<T extends object>(typed: T, filled: T, came: T): T {
  const over = { ...came };
  for (const name in typed) {
    if (asText(typed[name]) === asText(filled[name])) continue;
    over[name] =
      isTable(typed[name]) && isTable(filled[name]) && isTable(came[name])
        ? typedOver(typed[name], filled[name], came[name])
        : typed[name];
  }
  return over;
}

function isTable<T>(value: T): value is T & object {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
