// The English words as a file of their own for the built page: see `wordsApart` in vite.config.ts.
export { english as en } from '../strings.ts';
