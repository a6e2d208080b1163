import { readApi } from './readApi.ts';
import { API_FOLDER, API_SETTINGS } from './settings.ts';

// `npm run api`: the documentation of the public names as pages.
const { app, project, warnings } = await readApi(API_SETTINGS);
for (const warning of warnings) console.error(warning);
await app.generateDocs(project, API_FOLDER);
console.log('build/api/index.html');
process.exitCode = warnings.length > 0 ? 1 : 0;
