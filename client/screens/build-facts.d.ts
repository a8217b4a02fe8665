/** Facts that the bundler puts in (see bundle/vite.config.ts). */
declare const __VERSION__: string;
