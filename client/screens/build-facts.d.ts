/** Facts that the bundler puts in (see node/vite.config.ts). */
declare const __VERSION__: string;
