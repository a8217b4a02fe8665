/** Insulation colours as they are called in a unit. */
export const WIRE_COLOURS = [
  'black',
  'red',
  'blue',
  'yellow',
  'brown',
  'purple',
  'white',
  'green',
  'orange',
  'pink',
  'grey',
] as const;

/** A jumper taken off, with nothing said of where it was. */
export const JUMPER_GONE =
  "[i | i've | i have] (pulled | removed | took off) the jumper | [i | i've] took the jumper (off | out) | [the] jumper is (off | out | removed | gone)";

/** Conductor sizes (American Wire Gauge). */
export const WIRE_SIZES = [
  { size: '22 AWG', say: 'twenty two [gauge]' },
  { size: '20 AWG', say: 'twenty gauge' },
  { size: '18 AWG', say: 'eighteen [gauge]' },
  { size: '16 AWG', say: 'sixteen [gauge]' },
  { size: '14 AWG', say: 'fourteen [gauge] | number fourteen' },
  { size: '12 AWG', say: 'twelve [gauge] | number twelve' },
  { size: '10 AWG', say: 'ten [gauge] | number ten' },
  { size: '8 AWG', say: 'eight gauge | number eight' },
  { size: '6 AWG', say: 'six gauge | number six' },
] as const;

export const WIRE_ACTIONS = [
  { action: 'lifted', say: 'lifted | lifting | pulled off | took off | moved | moving | disconnected' },
  { action: 'landed', say: 'landed | landing | put back | reconnected | connected | terminated | hooked up' },
] as const;

/** A wire alone is pulled from a terminal; pulled without one it is a disconnect or a part. */
export const PULLED = 'pulled | took';
export const PUT = 'put';
/** Of a wire by its colour, as it stands. */
export const WIRE_IS_ON = 'is (back (on | onto | at) | landed (on | at) | (on | connected to))';
export const WIRE_IS_OFF = '(is | came) (off | off of | loose from)';

export const JUMPER_ACTIONS = [
  {
    action: 'jumper-on',
    say: '[put a | put | added a | placed a | a] (jumper | jumper wire | jump) [is] [on | in]  [from | across | between]',
  },
  { action: 'jumper-on', say: '(jumped | jumpered) [out] [from]' },
  {
    action: 'jumper-off',
    say: '[took the | took | removed the | pulled the | the] jumper (off | out | is off | is out | removed | gone) [of | from | across | between]',
  },
  { action: 'jumper-off', say: '(removed | pulled | took off) [the] jumper [from | across | between]' },
] as const;
