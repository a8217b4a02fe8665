/** The words that a JSGF grammar (W3C Note, 5 June 2000) asks a recogniser to know: comments, tags, weights and rule names apart. */
export function grammarWords(jsgf: string): Set<string> {
  const body = jsgf
    .replace(/\/\*[\s\S]*?\*\//g, ' ')
    .replace(/\/\/[^\n]*/g, ' ')
    .replace(/^#JSGF[^;]*;/, ' ')
    .replace(/\b(grammar|import)\s+[^;]*;/g, ' ')
    .replace(/\/\s*[\d.]+\s*\//g, ' ')
    .replace(/\{(?:\\.|[^}\\])*\}/g, ' ')
    .replace(/<[^>]*>\s*=/g, ' ')
    .replace(/\bpublic\b/g, ' ')
    .replace(/<[^>]*>/g, ' ');
  return new Set(body.split(/[\s()[\]|*+;="]+/).filter((word) => word !== ''));
}
