import { signal } from '@preact/signals';

/** The name of the shared folder that the browser wants to be asked for again; '' where there is none. */
export const folderAsks = signal('');

/** Under which name the folder that devices share is remembered. */
export const FOLDER = 'sharedFolder';
