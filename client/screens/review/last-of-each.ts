/** Of all that fall into one place, the last; in their order. What lies under it on a drawing would not be seen. */
export function lastOfEach<Item>(items: readonly Item[], placeOf: (item: Item) => string | number): readonly Item[] {
  const last = new Map<string | number, Item>();
  for (const item of items) {
    const place = placeOf(item);
    // What comes later is drawn later.
    last.delete(place);
    last.set(place, item);
  }
  return last.size === items.length ? items : [...last.values()];
}
