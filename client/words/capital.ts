/** A sentence begins with it. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Behind a colon it goes on in small letters, but for a terminal's own: "T one". */
export function uncapital(text: string): string {
  return /^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}
