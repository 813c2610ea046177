import { vi } from 'vitest';

// Runs before each file of tests: its modules of src are loaded again, so that no file meets what another left on the Shelf.
vi.resetModules();
