/** What was kept on this device under a name; nothing where it is missing or damaged. */
export function keptSettings(place: string): Readonly<Record<string, unknown>> {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(place) ?? '{}');
    return typeof kept === 'object' && kept !== null ? (kept as Record<string, unknown>) : {};
  } catch {
    return {};
  }
}

/** The value where it is one of the choices. */
export function oneOf<T extends string>(value: unknown, choices: readonly T[], otherwise: T): T {
  return choices.find((choice) => choice === value) ?? otherwise;
}
