/** Pronouns and things that are short for "… is" before a state. */
const SHORT_FOR_IS =
  /\b(it|that|there|what|he|she|who|somebody|someone|everything|everybody)(?:'|’| )?s\b(?! (?:own|of)\b)/g;
const SHORT_FOR_ARE = /\b(we|they|you)(?:'|’| )re\b/g;
/** "fan's running", and typed without its stroke "fans running": one thing, and the state it is in. */
const THING_IN_STATE =
  /\b([a-z]+?)(?:'|’)?s (?=(?:back|on|in|up|climbing|ticking|singing|racing|closed|working|off|gone|out|live|hot|running|turning|spinning|humming|moving|closed|lit|pulled in|warm|trying|grunting|there|still|now|getting|not|stuck|made|loose|missing|at|never)\b)/g;
/** "was on", "comes on": a verb, and no thing. */
const NO_THING =
  /^(?:wa|i|ha|hi|thi|ye|doe|a|u|ga|alway|come|goe|kick|turn|run|stay|hold|look|read|show|say|pull|start|keep|get|light|sit|work|hum|spin|click|trip|plug|lead|wire|panel|cover|screw|lug|blink|glow)$/;
/** Letters that are left out or exchanged in the words that matter most. */
const MISTYPED: readonly (readonly [RegExp, string])[] = [
  [/\b(?:pwr|powr|poer|poewr|pwer|powe)\b/g, 'power'],
  [/\bshockd\b/g, 'shocked'],
  [/\bsomebodys\b/g, 'somebody is'],
  [/\bbraeker\b/g, 'breaker'],
  [/\bdiscon+ect\b/g, 'disconnect'],
];

/**
 * Words as they were heard, and as they would be written out: what is short for "is" or "are" stands for itself, with
 * its stroke or without. Signs are looked for in both.
 */
export function speltOut(heard: string): readonly [string, string] {
  const words = heard.toLowerCase();
  const typed = MISTYPED.reduce((text, [wrong, right]) => text.replace(wrong, right), words);
  const out = typed
    .replace(SHORT_FOR_IS, '$1 is')
    .replace(SHORT_FOR_ARE, '$1 are')
    .replace(THING_IN_STATE, (said: string, thing: string) =>
      NO_THING.test(thing) && !/['’]/.test(said) ? said : `${thing} is `,
    );
  return [words, out];
}
