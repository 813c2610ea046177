import { signal } from '@preact/signals';

/** The name of the shared folder that the browser wants to be asked for again; '' where there is none. */
export const folderAsks = signal('');
