import { isTree } from '#core/fields/read-shape.ts';

/** How many doors a job file asks for, and of how many marks, as far as it can be told without reading it. */
export function howMuchIn(file: unknown): { readonly doors: number; readonly marks: number } {
  const doors = isTree(file) && Array.isArray(file.doors) ? file.doors : [];
  const count = doors.reduce((sum: number, door: unknown) => {
    const quantity = isTree(door) && typeof door.quantity === 'number' ? door.quantity : 1;
    return sum + quantity;
  }, 0);
  return { doors: count, marks: doors.length };
}
