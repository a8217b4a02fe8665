/** What the parts of the drawing are called: our names of the branches of the circuit, without their numbers' hyphens. */
const OWN: Readonly<Record<string, string>> = {
  'transformer-magnetising': 'transformer primary',
  'thermostat-electronics': 'thermostat',
  'call-Y': 'thermostat, R to Y',
  'call-G': 'thermostat, R to G',
  'call-O': 'thermostat, R to O',
  'call-Y2': 'thermostat, R to Y2',
  'float-in-R': 'float switch in R',
  'float-in-Y': 'float switch in Y',
  'capacitor-herm': 'herm section',
  'capacitor-fan': 'fan section',
  'compressor-run': 'compressor, run winding',
  'compressor-start': 'compressor, start winding',
  'fan-run': 'fan, run winding',
  'fan-start': 'fan, start winding',
  'blower-run': 'blower',
  'blower-winding-start': 'blower, start winding',
  'hard-start': 'start capacitor',
  'pole-1': 'contactor pole 1',
  'pole-2': 'contactor pole 2',
  'blade-1': 'disconnect blade 1',
  'blade-2': 'disconnect blade 2',
  delay: 'delay timer',
  'handler-feed-1': 'air handler feed 1',
  'handler-feed-2': 'air handler feed 2',
};

export function branchWords(branch: string): string {
  return OWN[branch] ?? branch.replaceAll('-', ' ');
}

/** The mark beside a terminal: the trade's own letters. */
export function terminalMark(point: string): string {
  const [letter, at] = point.split('@');
  if (at !== undefined) return letter!;
  const marks: Readonly<Record<string, string>> = { ground: 'GND', neutral: 'N', shell: 'shell', 'fan-frame': 'frame' };
  const short = point
    .replace(
      /^(comp|fan|cap|coil|handler|blower-cap|blower|door-switch|float|heater|start-cap|high-switch|low-switch|unloader)-/,
      '',
    )
    .replace(/^disconnect-/, '')
    .replace(/^transformer-(prim|sec)[a-z]*/, '$1')
    .replace(/^control-/, '')
    .replaceAll('-', ' ');
  return marks[point] ?? short;
}
