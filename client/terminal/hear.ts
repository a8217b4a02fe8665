import { readFile } from 'node:fs/promises';
import type { Expectation } from '../../grammar/phrases/meaning.ts';
import { understand } from '../../grammar/phrases/understand.ts';
import type { Utterance } from '../listening/ear.ts';
import { ListeningError } from '../listening/listening-error.ts';
import { WavEar } from '../listening/node/wav-ear.ts';
import { MODEL_CHOICES, type ModelChoice } from '../listening/recogniser/speech-module.ts';
import { describeUnderstanding } from './describe-understanding.ts';
import { EXPECT_OPTION, expectationOf } from './expectation-from.ts';
import { wrongUse } from './read-arguments.ts';
import { runTool } from './run-tool.ts';
import { TerminalError } from './terminal-error.ts';
import type { Given, Tool } from './tool.ts';

const TOOL = {
  name: 'hear',
  purpose: 'says what is heard in sound files and what it means, one JSON object an utterance.',
  usage: ['-- [--expect POINTS] [--grammar FILE.jsgf] [--models WHICH] [--model FOLDER] FILE.wav …'],
  words: true,
  options: {
    expect: EXPECT_OPTION,
    grammar: { value: 'FILE', says: 'listens for this JSGF grammar instead; then only the words are printed' },
    models: { value: 'WHICH', says: 'wideband, bundled, or both (both)' },
    model: { value: 'FOLDER', says: 'hears with another 16 kHz acoustic model' },
  },
  notes: ['Sound is PCM (WAV) of 8 to 192 kHz with any number of channels.'],
  examples: [
    'npm run -s hear -- fixtures/audio/library/01-outdoor-air.wav',
    'npm run -s hear -- --expect L1,ground reading.wav',
    'npm run -s hear -- --grammar orders.jsgf order.wav',
  ],
  exits: '0; 1 when a file could not be heard; 2 when used wrongly.',
} as const satisfies Tool;

/** Sound files in, one JSON object for each utterance out. */
async function main({ options, words: files }: Given<typeof TOOL>): Promise<void> {
  if (files.length === 0) throw wrongUse(TOOL, 'No sound file is named');
  const expectation = expectationOf(TOOL, options.expect);
  const { model } = options;
  const models = modelsOf(options.models);
  const grammar = options.grammar === undefined ? undefined : await readGrammar(options.grammar);
  const ear = new WavEar([], {
    ...(grammar !== undefined && { grammar }),
    ...(model !== undefined && { model }),
    ...(models !== undefined && { models }),
  });
  const print = (line: object): void => void process.stdout.write(`${JSON.stringify(line)}\n`);
  for (const file of files) {
    try {
      for (const utterance of await ear.listen(file, expectation)) {
        print({ file, ...(grammar === undefined ? described(utterance, expectation) : worded(utterance)) });
      }
    } catch (error) {
      if (!(error instanceof ListeningError)) throw error;
      process.exitCode = 1;
      process.stderr.write(`${error.message}\n`);
      print({ file, heard: '', kind: 'unclear', verdict: 'rejected', reason: error.fault, message: error.message });
      if (error.fault === 'model-missing' || error.fault.startsWith('grammar-')) break;
    }
  }
  await ear.stop();
}

function modelsOf(named: string | undefined): ModelChoice | undefined {
  const models = MODEL_CHOICES.find((one) => one === named);
  if (named !== undefined && models === undefined)
    throw wrongUse(TOOL, `There is no "${named}" among ${MODEL_CHOICES.join(', ')}`);
  return models;
}

/** The meaning as the parse tool has it, with what the sound adds. */
function described(utterance: Utterance, expectation: Expectation | undefined): object {
  const { text, alternatives, accepted, doubtful = false } = utterance;
  const meant = describeUnderstanding(understand(text, expectation, { alternatives: [...alternatives], doubtful }));
  const doubted = { heard: text, kind: 'unclear', verdict: 'rejected', reason: 'outside-grammar', alternatives: [] };
  return { ...(accepted ? meant : doubted), ...measured(utterance, accepted ? Number(meant['confidence']) : 1) };
}

const worded = (utterance: Utterance): object => ({
  heard: utterance.text,
  verdict: utterance.accepted ? 'logged' : 'rejected',
  ...measured(utterance, 1),
});

/** @param share how sure the meaning is, given the words */
const measured = ({ confidence, verdictMs, realTimeFactor }: Utterance, share: number): object => ({
  confidence: Math.round(confidence * share * 1000) / 1000,
  ms: Math.round(verdictMs),
  realTimeFactor: Math.round(realTimeFactor * 1000) / 1000,
});

async function readGrammar(path: string): Promise<string> {
  return await readFile(path, 'utf8').catch((error: unknown) => {
    throw new TerminalError('file-missing', path, error);
  });
}

await runTool(TOOL, main);
