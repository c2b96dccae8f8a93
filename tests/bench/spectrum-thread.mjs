// A thread does not take over the loader of its parent: it registers its own before it reads TypeScript.
import { register } from 'tsx/esm/api';

register();
await import('./spectrum-thread.ts');
