import { afterEach, describe, expect, test, vi } from 'vitest';
import { permission, permissionWords } from '../../../src/tasks/screen/reminders';

afterEach(() => void vi.unstubAllGlobals());

describe('reminders', () => {
  test('a browser without notifications is told apart from one where they are refused', () => {
    vi.stubGlobal('Notification', undefined);
    delete (globalThis as { Notification?: unknown }).Notification;
    expect(permission()).toBe('none');
    vi.stubGlobal('Notification', { permission: 'denied' });
    expect(permission()).toBe('denied');
  });

  test('where none can be shown, it is said what happens instead, and what can be done', () => {
    expect(permissionWords('denied')).toContain('not permitted');
    expect(permissionWords('denied')).toContain('browser’s settings');
    for (const refused of ['denied', 'none'] as const)
      expect(permissionWords(refused)).toContain('this list is what reminds you');
    expect(permissionWords('default')).toContain('only while it is open');
    expect(permissionWords('granted')).toBe('');
  });
});
