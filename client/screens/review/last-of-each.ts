/** Of all that fall into one place, the last; in their order. What lies under it on a drawing would not be seen. */
export function lastOfEach<Item>(items: readonly Item[], placeOf: (item: Item) => number): readonly Item[] {
  const taken = new Set<number>();
  const last: Item[] = [];
  for (let at = items.length - 1; at >= 0; at -= 1) {
    const item = items[at] as Item;
    const place = placeOf(item);
    if (taken.has(place)) continue;
    taken.add(place);
    last.push(item);
  }
  return last.length === items.length ? items : last.reverse();
}
