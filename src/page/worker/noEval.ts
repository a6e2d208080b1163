import { config } from 'zod';

// The page's policy forbids code made of text; asked to, the schema library does not even try.
config({ jitless: true });
