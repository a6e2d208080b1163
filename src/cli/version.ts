export { VERSION } from '../pool/version.ts';
